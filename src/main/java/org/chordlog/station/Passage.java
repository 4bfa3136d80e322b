package org.chordlog.station;

import java.util.function.Consumer;
import org.chordlog.measure.Face;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Sample;
import org.chordlog.measure.SetUp;
import org.chordlog.profile.LivePiece;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.TrackSettings;
import org.jspecify.annotations.Nullable;

/**
 * Follows the section that runs through and tells one piece from the next, with the set-up in
 * force; where that changes, a piece under way gives no reading. Used by the station's thread
 * alone, but for {@link #live()}.
 */
final class Passage {
  private static final long SHOWN_NANOS = 500_000_000L;

  private final StationSettings settings;
  private final FeedSettings feed;
  private final CurrentWork current;
  private final @Nullable LengthDelay delay;
  private LengthSource source;
  private @Nullable Followed followed;
  private volatile @Nullable LivePiece live;
  private long shownNanos;

  /** A piece that ran through, the set-up while it did, and where its length came from. */
  record Ran(PieceRun run, WorkSnapshot.Computed by, LengthSource source) {}

  private record Followed(PieceTracker tracker, WorkSnapshot.Computed by, long zeroNm) {
    boolean concave() {
      return by.setUp().measuredFace() == Face.INNER;
    }
  }

  /** {@code delay} is that of a length on a link of its own, else null. */
  Passage(
      StationSettings settings,
      FeedSettings feed,
      CurrentWork current,
      @Nullable LengthDelay delay) {
    this.delay = delay;
    source = feed.length();
    this.settings = settings;
    this.feed = feed;
    this.current = current;
  }

  void offer(Sample depth, long lengthNm, Consumer<Ran> sink) {
    Followed now = follow(sink);
    if (now == null) {
      return;
    }
    now.tracker.offer(
        depth.sequence(),
        depth.monotonicNanos(),
        lengthNm,
        depth.valueNm() - now.zeroNm,
        run -> sink.accept(new Ran(run, now.by, source)));
    look(now, depth, lengthNm);
    show(now.tracker, depth.monotonicNanos());
  }

  private void look(Followed now, Sample depth, long lengthNm) {
    if (delay != null && source == feed.length()) {
      long depthNm = depth.valueNm() - now.zeroNm;
      delay.ran(
          now.tracker.running(),
          now.tracker.touches(),
          new LengthDelay.Placed(depth.monotonicNanos(), lengthNm, depthNm),
          now.concave());
    }
  }

  /** Where lengths are not known, the order of time is all that is followed. */
  void lengthKnown(boolean known, Consumer<Ran> sink) {
    Followed before = followed;
    if (before != null) {
      before.tracker.lengthLost(run -> sink.accept(new Ran(run, before.by, source)));
    }
    brokeOff();
    followed = null;
    source = known ? feed.length() : LengthSource.NONE;
  }

  private void brokeOff() {
    live = null;
    if (delay != null) {
      delay.brokeOff();
    }
  }

  /** Null without a job or a bridge. */
  @SuppressWarnings("ReferenceEquality") // a set-up that did not change is the same object
  private @Nullable Followed follow(Consumer<Ran> sink) {
    WorkSnapshot work = current.work();
    WorkSnapshot.Computed by = work.computed();
    Followed before = followed;
    if (before != null && before.by == by) {
      return before;
    }
    gap(sink);
    followed =
        by == null
            ? null
            : new Followed(new PieceTracker(track(by, work.zeroNm())), by, work.zeroNm());
    return followed;
  }

  private TrackSettings track(WorkSnapshot.Computed by, long zeroNm) {
    SetUp setUp = by.setUp();
    Long freeAirNm = settings.captureSettings().plunger().freeAirNm();
    return new TrackSettings(
        new TrackSettings.Feed(source, feed.bothWays(), feed.mostMmPerSecond()),
        new TrackSettings.Gauge(
            setUp.measuredFace() == Face.INNER,
            freeAirNm == null ? null : freeAirNm - zeroNm,
            Length.nm(setUp.indicator().resolutionMm()),
            Length.nm(setUp.indicator().travelMm()),
            by.model().spanMm()),
        feed.known());
  }

  /** The stream broke off: a piece under way gives no reading. */
  void gap(Consumer<Ran> sink) {
    Followed before = followed;
    if (before != null) {
      before.tracker.gap(run -> sink.accept(new Ran(run, before.by, source)));
      brokeOff();
    }
  }

  private void show(PieceTracker tracker, long nanos) {
    if (!tracker.running()) {
      live = null;
    } else if (live == null || nanos - shownNanos >= SHOWN_NANOS) {
      shownNanos = nanos;
      live = tracker.live(nanos);
    }
  }

  boolean running() {
    return followed != null && followed.tracker.running();
  }

  /** The piece that runs through, as it was half a second ago at most; null if none. Any thread. */
  @Nullable LivePiece live() {
    return live;
  }
}
