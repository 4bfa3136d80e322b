package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.chordlog.measure.Plan;
import org.chordlog.measure.SubgroupRule;

/** A plan of measurement. */
record PlanJson(
    @JsonProperty("positions") List<String> positions,
    @JsonProperty("subgroups") Subgroups subgroups) {
  /** How readings become subgroups. */
  record Subgroups(@JsonProperty("kind") SubgroupRule.Kind kind, @JsonProperty("size") int size) {}

  static PlanJson of(Plan plan) {
    SubgroupRule rule = plan.subgroups();
    return new PlanJson(plan.positions(), new Subgroups(rule.kind(), rule.size()));
  }

  Plan plan() {
    return new Plan(positions, new SubgroupRule(subgroups.kind, subgroups.size));
  }
}
