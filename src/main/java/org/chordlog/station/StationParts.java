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
  final CurrentWork current;
  final RecentValues recent;
  final LiveValue live;
  final StreamGuard guard;
  final StudyIntake study;
  final ReadingIntake intake;
  final Reception reception;
  final TraceLog trace;

  /** Null where the length has no link of its own. */
  final @Nullable CountsInbox counts;

  /** Null where the length has no link of its own; belongs to a thread of its own. */
  final @Nullable LengthLink lengthLink;

  /** Null where nothing runs through. */
  final @Nullable Line line;

  /** {@code changed} is told of a change by another thread than the station's. */
  StationParts(StationSettings settings, StationContext around, Runnable changed) {
    this.settings = settings;
    this.around = around;
    String name = settings.name();
    clock = new WatchedClock(name, around);
    link = new LinkWatch(name, clock.micros());
    gaps = new Gaps(name, around.incidents(), "", settings.silenceSeconds());
    current = new CurrentWork(settings, around.store());
    recent = new RecentValues(settings.stillNanos());
    live = new LiveValue(settings, current, around.announcer());
    guard = new StreamGuard(name, around);
    study = new StudyIntake(settings, around, changed);
    intake = new ReadingIntake(settings, around, current, counters, clock, guard, study);
    reception =
        new Reception(
            name,
            new Reception.Of("the indicator", settings.depthChannel(), "channel"),
            around.incidents());
    trace = new TraceLog(name, around.store().traces(), around.incidents());
    FeedSettings feed = settings.feed();
    FeedSettings.CountLink link = feed == null ? null : feed.link();
    counts = link == null ? null : new CountsInbox(new LengthDelay(link.delayMs()));
    lengthLink =
        feed == null || counts == null ? null : new LengthLink(name, feed, counts, around, changed);
    line = feed == null ? null : new Line(settings, feed, this, changed);
  }

  long lastSampleSequence() {
    return around.store().traces().lastSequence(settings.name());
  }
}
