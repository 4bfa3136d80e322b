package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Plan;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.web.http.Call;
import org.jspecify.annotations.Nullable;

/** Where a piece is measured, in order, and how its readings become subgroups. */
record PlanForm(
    @Nullable List<String> positions,
    SubgroupRule.@Nullable Kind subgroups,
    @JsonPropertyDescription("2 to 25; 1 for INDIVIDUAL") @Nullable Integer subgroupSize) {
  /** As many as a subgroup may have readings. */
  private static final int MOST_POSITIONS = 25;

  Plan plan() {
    if (positions == null) {
      throw new BadInput("positions", "", "are missing", "one or more names");
    }
    if (subgroups == null) {
      throw new BadInput("subgroups", "", "is missing", Call.names(SubgroupRule.Kind.class));
    }
    refuse(positions);
    return new Plan(positions, rule(subgroups));
  }

  private static void refuse(List<String> positions) {
    if (positions.size() > MOST_POSITIONS) {
      throw new BadInput(
          "positions", positions.size(), "are too many", "up to " + MOST_POSITIONS + " positions");
    }
    for (String position : positions) {
      if (position.strip().equalsIgnoreCase(StatisticsPlan.WHOLE_PIECE)) {
        throw new BadInput(
            "positions", position, "is the name of all positions together", "another name");
      }
    }
  }

  private SubgroupRule rule(SubgroupRule.Kind kind) {
    int otherwise = kind == SubgroupRule.Kind.INDIVIDUAL ? 1 : 0;
    try {
      return new SubgroupRule(kind, subgroupSize == null ? otherwise : subgroupSize);
    } catch (BadInput e) {
      throw new BadInput(
          "subgroupSize",
          subgroupSize == null ? "" : subgroupSize,
          "is out of range",
          e.faults().get(0).allowed());
    }
  }

  static PlanForm of(Plan plan) {
    return new PlanForm(plan.positions(), plan.subgroups().kind(), plan.subgroups().size());
  }
}
