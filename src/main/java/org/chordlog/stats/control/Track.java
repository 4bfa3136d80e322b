package org.chordlog.stats.control;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.control.ChartSnapshot.EventMark;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The charts of one stream of points (single values, or subgroups) through its phases. While limits
 * are not frozen the newest {@value #OPEN} points are judged against the newest estimate each time;
 * older ones, and all once limits freeze or the phase ends, are settled for good.
 */
public final class Track {
  static final int OPEN = 500;
  static final int EVENTS = 200;

  private record Waiting(long number, Point point) {}

  private final StatisticsPlan plan;
  private final int baselinePoints;
  private final Supplier<Tally> tallies;
  private final Map<ChartKind, Series> series = new EnumMap<>(ChartKind.class);
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private final Deque<EventMark> events = new ArrayDeque<>();
  private Tally tally;
  private @Nullable Map<ChartKind, Estimate> frozen;
  private boolean released;
  private boolean ofAll;
  private long number;
  private int phase = 1;

  public Track(
      StatisticsPlan plan, boolean subgroups, int baselinePoints, Supplier<Tally> tallies) {
    this.plan = plan;
    this.baselinePoints = baselinePoints;
    this.tallies = tallies;
    tally = tallies.get();
    for (ChartKind kind : ChartKind.of(subgroups, plan.subgrouped())) {
      series.put(kind, new Series(kind, plan));
    }
    frozen = given();
  }

  /** Takes in the next point. */
  public void add(Point point) {
    waiting.addLast(new Waiting(++number, point));
    if (!point.excluded()) {
      tally.add(point);
    }
    if (frozen != null) {
      settle(0);
    } else if (baselineComplete()) {
      freeze();
    } else {
      settle(OPEN);
    }
  }

  /** Notes what happened after the newest point. */
  public void mark(JobEvent event) {
    events.addLast(new EventMark(number + 1, event));
    if (events.size() > EVENTS) {
      events.removeFirst();
    }
  }

  /** Freezes limits where they can be estimated; there may be too few points yet. */
  public void freeze() {
    if (frozen == null && known()) {
      frozen = estimates();
      settle(0);
    }
  }

  /** Judges all points by the limits that another track has come to; not packed. */
  public void judgeBy(Track all) {
    if (frozen == null && all.known()) {
      frozen = all.estimates();
      ofAll = true;
    }
  }

  /** Limits are estimated again from here on. */
  public void release() {
    frozen = given();
    released = true;
  }

  /** Begins a phase: what comes is judged by limits of its own. */
  public void startPhase() {
    settle(0);
    tally = tallies.get();
    frozen = given();
    released = false;
    phase++;
    series.values().forEach(Series::startPhase);
  }

  /** Whether it has that chart. */
  public boolean has(ChartKind kind) {
    return series.containsKey(kind);
  }

  /** That chart as it is now. */
  public ChartSnapshot snapshot(ChartKind kind) {
    Series drawn = drawn(kind);
    SnapshotBuilder builder = new SnapshotBuilder(kind, plan);
    at(kind).settled().forEach(builder::add);
    drawn.settled().forEach(builder::add);
    return builder.build(
        List.copyOf(events),
        at(kind).settledCount() + drawn.settledCount(),
        at(kind).signalling() + drawn.signalling(),
        number);
  }

  private Series at(ChartKind kind) {
    Series found = series.get(kind);
    if (found == null) {
      throw new IllegalArgumentException("no chart " + kind + " here");
    }
    return found;
  }

  /** The points that are not settled yet, judged as of now. */
  private Series drawn(ChartKind kind) {
    Series branch = at(kind).branch();
    Estimate estimate = estimate(kind);
    waiting.forEach(each -> branch.settle(each.number(), each.point(), estimate, phase, false));
    return branch;
  }

  private void settle(int kept) {
    while (waiting.size() > kept) {
      Waiting oldest = waiting.removeFirst();
      for (Series each : series.values()) {
        Estimate estimate = estimate(each.kind());
        each.settle(oldest.number(), oldest.point(), estimate, phase, frozen != null && !ofAll);
      }
    }
  }

  private boolean baselineComplete() {
    return !released && baselinePoints > 0 && tally.count() >= baselinePoints;
  }

  private boolean known() {
    return series.keySet().stream().allMatch(kind -> tally.estimate(kind).known());
  }

  private Estimate estimate(ChartKind kind) {
    Estimate held = frozen == null ? null : frozen.get(kind);
    return held == null ? tally.estimate(kind) : held;
  }

  private Map<ChartKind, Estimate> estimates() {
    Map<ChartKind, Estimate> estimates = new EnumMap<>(ChartKind.class);
    series.keySet().forEach(kind -> estimates.put(kind, tally.estimate(kind)));
    return estimates;
  }

  private @Nullable Map<ChartKind, Estimate> given() {
    ChartSettings.Standard standard = plan.charts().standard();
    if (standard == null) {
      return null;
    }
    Estimate estimate =
        new Estimate(standard.mean(), standard.standardDeviation(), Double.POSITIVE_INFINITY);
    Map<ChartKind, Estimate> estimates = new EnumMap<>(ChartKind.class);
    series.keySet().forEach(kind -> estimates.put(kind, estimate));
    return estimates;
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(number).put(phase).put(released).put(frozen != null);
    if (frozen != null) {
      frozen.values().forEach(estimate -> estimate.pack(packer));
    }
    tally.pack(packer);
    packer.put(waiting.size());
    waiting.forEach(each -> each.point().pack(packer.put(each.number())));
    packer.put(events.size());
    events.forEach(mark -> EventPacking.pack(mark, packer));
    series.values().forEach(each -> each.pack(packer));
  }

  /** Takes up the state that was written. */
  public void unpack(Unpacker from) {
    number = from.aLong();
    phase = from.anInt();
    released = from.aBoolean();
    frozen = from.aBoolean() ? estimates(from) : null;
    tally.unpack(from);
    int waitingCount = from.anInt();
    for (int i = 0; i < waitingCount; i++) {
      waiting.addLast(new Waiting(from.aLong(), from.shared(Point.unpack(from))));
    }
    int eventCount = from.anInt();
    for (int i = 0; i < eventCount; i++) {
      events.addLast(EventPacking.unpack(from));
    }
    series.values().forEach(each -> each.unpack(from));
  }

  private Map<ChartKind, Estimate> estimates(Unpacker from) {
    Map<ChartKind, Estimate> estimates = new EnumMap<>(ChartKind.class);
    series.keySet().forEach(kind -> estimates.put(kind, Estimate.unpack(from)));
    return estimates;
  }
}
