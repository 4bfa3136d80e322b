package org.chordlog.station;

import org.jspecify.annotations.Nullable;

/**
 * What one station is made of. Made on the thread that starts the station; from then on each part
 * is used by the station's thread alone, except where the part itself says otherwise.
 */
final class StationParts {
  final StationSettings settings;
  final StationContext around;
  final Counters counters = new Counters();
  final WatchedClock clock;
  final LinkWatch link;
  final Gaps gaps;
  final CurrentWork desk;
  final RecentValues recent;
  final LiveValue live;
  final StreamGuard guard;
  final StudyIntake study;
  final ReadingIntake intake;
  final Reception reception;
  final TraceLog trace;

  /** Null where nothing runs through. */
  final @Nullable Line line;

  /** {@code changed} is told when a study went on, by another thread. */
  StationParts(StationSettings settings, StationContext around, Runnable changed) {
    this.settings = settings;
    this.around = around;
    String name = settings.name();
    clock = new WatchedClock(name, around);
    link = new LinkWatch(name, clock.micros());
    gaps = new Gaps(name, around.incidents());
    desk = new CurrentWork(settings, around.store());
    recent = new RecentValues(settings.stillNanos());
    live = new LiveValue(name, desk, around.announcer());
    guard = new StreamGuard(name, around);
    study = new StudyIntake(settings, around, changed);
    intake = new ReadingIntake(settings, around, desk, counters, clock, guard, study);
    reception = new Reception(name, settings.depthChannel(), around.incidents());
    trace = new TraceLog(name, around.store().traces(), around.incidents());
    FeedSettings feed = settings.feed();
    line = feed == null ? null : new Line(settings, feed, this);
  }

  long lastSampleSequence() {
    return around.store().traces().lastSequence(settings.name());
  }
}
