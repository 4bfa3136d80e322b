package org.chordlog.stats;

import java.util.EnumSet;
import java.util.Set;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Classes;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.capability.Evidence;
import org.chordlog.stats.capability.Summarising;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.ControlWatch;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Point;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.SignalKey;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.control.Subgrouper;
import org.chordlog.stats.control.Tally;
import org.chordlog.stats.control.Track;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** The running statistics of one characteristic: its charts, and the evidence for capability. */
final class Characteristic {
  private final StatisticsPlan plan;
  private final Subgrouper subgrouper;
  private final Track singles;
  private final @Nullable Track subgroups;
  private final ControlWatch watch;
  private Evidence phase;
  private Evidence job;
  private Set<SignalKey> answered = Set.of();
  private final SnapshotCache made = new SnapshotCache();

  Characteristic(StatisticsPlan plan) {
    this.plan = plan;
    SubgroupRule rule = plan.subgroups();
    int baseline = plan.charts().baselinePoints();
    subgrouper = new Subgrouper(rule);
    singles = new Track(plan, false, baseline * rule.size(), Tally.singles());
    subgroups =
        plan.subgrouped()
            ? new Track(plan, true, baseline, Tally.subgroups(plan.charts().spread()))
            : null;
    watch = new ControlWatch(plan);
    phase = new Evidence(plan);
    job = new Evidence(plan);
  }

  /** Judges all points by the limits of another, which has seen them all. */
  void judgeBy(Characteristic all) {
    singles.judgeBy(all.singles);
    if (subgroups != null && all.subgroups != null) {
      subgroups.judgeBy(all.subgroups);
    }
  }

  /** Signals whose cause was found; not part of the checkpoint. */
  void answer(Set<SignalKey> signals) {
    if (!answered.equals(signals)) {
      answered = Set.copyOf(signals);
      made.clear();
    }
  }

  ControlVerdict control() {
    return watch.verdict(answered);
  }

  void add(Observation seen, String exclusion) {
    made.clear();
    Point single = Point.single(seen, exclusion);
    singles.add(single);
    if (subgroups == null) {
      watch.add(single);
    }
    if (exclusion.isEmpty()) {
      phase.add(seen);
      job.add(seen);
    }
    if (subgroups != null) {
      add(subgrouper.add(seen, exclusion));
    }
  }

  private void add(@Nullable Point subgroup) {
    if (subgroup == null || subgroups == null) {
      return;
    }
    subgroups.add(subgroup);
    watch.add(subgroup);
    if (!subgroup.excluded()) {
      phase.addSubgroup(subgroup);
      job.addSubgroup(subgroup);
    }
  }

  void happened(JobEvent event) {
    made.clear();
    if (event.startsPhase()) {
      startPhase();
    }
    happened(event, singles);
    if (subgroups != null) {
      happened(event, subgroups);
    }
  }

  /** What comes is charted and judged by itself, and no range is taken across. */
  void startPhase() {
    made.clear();
    add(subgrouper.close());
    singles.startPhase();
    if (subgroups != null) {
      subgroups.startPhase();
    }
    watch.startPhase();
    phase = new Evidence(plan);
    job.breakRun();
  }

  private static void happened(JobEvent event, Track track) {
    if (event.kind() == JobEvent.Kind.LIMITS_FROZEN) {
      track.freeze();
    } else if (event.kind() == JobEvent.Kind.LIMITS_RELEASED) {
      track.release();
    }
    track.mark(event);
  }

  Set<ChartKind> kinds() {
    Set<ChartKind> kinds = EnumSet.noneOf(ChartKind.class);
    for (ChartKind kind : ChartKind.values()) {
      if (singles.has(kind) || (subgroups != null && subgroups.has(kind))) {
        kinds.add(kind);
      }
    }
    return kinds;
  }

  /** Like all that follows, made once until the next reading or event. */
  ChartSnapshot chart(ChartKind kind) {
    Track track = subgroups != null && subgroups.has(kind) ? subgroups : singles;
    return made.chart(kind, track::snapshot);
  }

  /** One phase is the whole job. */
  Summary summary(String name, Scope scope) {
    boolean onePhase = phase.values().n() == job.values().n();
    return made.summary(
        scope,
        asked ->
            asked == Scope.JOB && onePhase
                ? summary(name, Scope.PHASE).over(asked)
                : make(name, asked));
  }

  private Summary make(String name, Scope scope) {
    return new Summarising(plan, scope == Scope.JOB ? job : phase, control(), subgrouper.waiting())
        .summary(name, scope);
  }

  DistributionSnapshot distribution(Scope scope) {
    return made.distribution(scope, asked -> Classes.of(plan, asked == Scope.JOB ? job : phase));
  }

  void pack(Packer packer) {
    subgrouper.pack(packer);
    singles.pack(packer);
    if (subgroups != null) {
      subgroups.pack(packer);
    }
    watch.pack(packer);
    phase.pack(packer);
    job.pack(packer);
  }

  void unpack(Unpacker from) {
    subgrouper.unpack(from);
    singles.unpack(from);
    if (subgroups != null) {
      subgroups.unpack(from);
    }
    watch.unpack(from);
    phase = Evidence.unpack(plan, from);
    job = Evidence.unpack(plan, from);
  }
}
