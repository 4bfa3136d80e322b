package org.chordlog.station;

import org.chordlog.measure.Length;
import org.chordlog.measure.Sample;
import org.chordlog.profile.CountLength;
import org.chordlog.profile.CountScale;
import org.jspecify.annotations.Nullable;

/**
 * Gives each depth its length along the feed: the counts of the same frame, or by a stated feed. A
 * depth whose frame has no length is left out. Used by the station's thread alone.
 */
final class FeedStream {
  /** Where no length is known, only the order of time counts; any constant feed serves. */
  private static final double UNKNOWN_MM_PER_SECOND = 100;

  private final int lengthChannel;
  private final CountScale scale;
  private final @Nullable CountLength counts;
  private final double mmPerSecond;
  private @Nullable Sample waitingDepth;
  private @Nullable Sample waitingLength;

  /** Takes depths with their lengths. */
  interface Sink {
    void runsThrough(Sample depth, long lengthNm);
  }

  FeedStream(FeedSettings feed) {
    FeedSettings.Wheel wheel = feed.wheel();
    lengthChannel = wheel == null ? Integer.MIN_VALUE : wheel.channel();
    scale = wheel == null ? new CountScale(1, false, 0) : wheel.scale();
    counts = wheel == null ? null : new CountLength(wheel.scale());
    Double stated = feed.mmPerSecond();
    mmPerSecond = stated == null ? UNKNOWN_MM_PER_SECOND : stated;
  }

  boolean isLength(int channel) {
    return channel == lengthChannel;
  }

  void depth(Sample sample, Sink sink) {
    if (counts == null) {
      sink.runsThrough(sample, Math.round(sample.monotonicNanos() / 1e3 * mmPerSecond));
      return;
    }
    waitingDepth = sample;
    pair(counts, sink);
  }

  void length(Sample sample, Sink sink) {
    if (counts != null) {
      waitingLength = sample;
      pair(counts, sink);
    }
  }

  /** Values of one frame have one time. */
  private void pair(CountLength by, Sink sink) {
    Sample depth = waitingDepth;
    Sample length = waitingLength;
    if (depth != null && length != null && depth.monotonicNanos() == length.monotonicNanos()) {
      forget();
      sink.runsThrough(depth, lengthNm(by, length.valueNm()));
    }
  }

  /** Decimals count, but for a counter that starts over, which has none. */
  private long lengthNm(CountLength by, long valueNm) {
    if (scale.bits() > 0) {
      return by.lengthNm(Math.round(Length.mm(valueNm)));
    }
    long nm = Math.round(valueNm * scale.mmPerCount());
    return scale.reversed() ? -nm : nm;
  }

  void forget() {
    waitingDepth = null;
    waitingLength = null;
  }
}
