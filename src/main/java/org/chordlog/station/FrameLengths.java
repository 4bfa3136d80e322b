package org.chordlog.station;

import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Lengths from the counts of the depth's own frame, or by a stated feed. A depth whose frame has no
 * length is left out.
 */
final class FrameLengths implements FeedStream {
  private final int lengthChannel;
  private final @Nullable CountedLength counts;
  private final double mmPerSecond;
  private final Sink sink;
  private @Nullable Sample waitingDepth;
  private @Nullable Sample waitingLength;

  FrameLengths(FeedSettings feed, Sink sink) {
    FeedSettings.Wheel wheel = feed.wheel();
    lengthChannel = wheel == null ? Integer.MIN_VALUE : wheel.channel();
    counts = wheel == null ? null : new CountedLength(wheel.scale());
    Double stated = feed.mmPerSecond();
    mmPerSecond = stated == null ? UNKNOWN_MM_PER_SECOND : stated;
    this.sink = sink;
  }

  @Override
  public boolean isLength(int channel) {
    return channel == lengthChannel;
  }

  @Override
  public void depth(Sample sample) {
    if (counts == null) {
      sink.runsThrough(sample, FeedStream.byTime(sample, mmPerSecond));
      return;
    }
    waitingDepth = sample;
    pair(counts);
  }

  @Override
  public void length(Sample sample) {
    if (counts != null) {
      waitingLength = sample;
      pair(counts);
    }
  }

  /** Values of one frame have one time. */
  private void pair(CountedLength by) {
    Sample depth = waitingDepth;
    Sample length = waitingLength;
    if (depth != null && length != null && depth.monotonicNanos() == length.monotonicNanos()) {
      forget();
      sink.runsThrough(depth, by.nm(length.valueNm()));
    }
  }

  @Override
  public void catchUp() {}

  @Override
  public void forget() {
    waitingDepth = null;
    waitingLength = null;
  }
}
