package org.chordlog.stats;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The characteristics of a job by name: one for each position, those that the plan does not name
 * coming with their first reading, and with subgroups by piece one for the whole piece before them.
 */
final class Characteristics {
  private static final int MOST = 100;
  private final StatisticsPlan plan;
  private final @Nullable Characteristics judges;
  private final Map<String, Characteristic> byName = new LinkedHashMap<>();

  /** {@code judges}: whose limits judge the points, null where each has its own. */
  Characteristics(StatisticsPlan plan, @Nullable Characteristics judges) {
    this.plan = plan;
    this.judges = judges;
    if (byPiece()) {
      byName.put(
          StatisticsPlan.WHOLE_PIECE, judged(StatisticsPlan.WHOLE_PIECE, new Characteristic(plan)));
    }
    if (byPosition()) {
      plan.positions().forEach(this::position);
    }
  }

  /** The first being the one to show. */
  List<String> names() {
    return List.copyOf(byName.keySet());
  }

  /**
   * @throws BadInput for a name that this job does not have
   */
  Characteristic find(String name) {
    Characteristic found = byName.get(name);
    if (found == null) {
      throw new BadInput("characteristic", name, "does not exist in this job", names().toString());
    }
    return found;
  }

  void add(Observation seen, String exclusion) {
    if (byPiece()) {
      find(StatisticsPlan.WHOLE_PIECE).add(seen, exclusion);
    }
    if (byPosition()) {
      position(seen.position()).add(seen, exclusion);
    }
  }

  void happened(JobEvent event) {
    byName.values().forEach(each -> each.happened(event));
  }

  void startPhase() {
    byName.values().forEach(Characteristic::startPhase);
  }

  void pack(Packer packer) {
    packer.put(byName.size());
    byName.forEach((name, each) -> each.pack(packer.put(name)));
  }

  void unpack(Unpacker from) {
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      String name = from.text();
      (name.equals(StatisticsPlan.WHOLE_PIECE) ? find(name) : position(name)).unpack(from);
    }
  }

  private boolean byPiece() {
    return plan.subgroups().kind() == SubgroupRule.Kind.PIECE;
  }

  private boolean byPosition() {
    return !byPiece() || plan.positions().size() > 1;
  }

  private Characteristic position(String name) {
    if (byName.size() >= MOST && !byName.containsKey(name)) {
      throw new BadInput("position", name, "is one too many", "up to " + MOST);
    }
    return byName.computeIfAbsent(name, each -> judged(each, new Characteristic(positionPlan())));
  }

  private StatisticsPlan positionPlan() {
    return byPiece() ? plan.withSubgroups(new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)) : plan;
  }

  private Characteristic judged(String name, Characteristic own) {
    Characteristic whole = judges == null ? null : judges.byName.get(name);
    if (whole != null) {
      own.judgeBy(whole);
    }
    return own;
  }
}
