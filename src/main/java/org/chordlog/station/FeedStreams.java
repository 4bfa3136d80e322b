package org.chordlog.station;

import org.jspecify.annotations.Nullable;

/** Chooses where the lengths along the feed come from. */
final class FeedStreams {
  private FeedStreams() {}

  /** {@code counts} are those of the length's own link; null without one. */
  static FeedStream of(FeedSettings feed, @Nullable CountsInbox counts, FeedStream.Sink sink) {
    FeedSettings.Wheel wheel = feed.wheel();
    return counts == null || wheel == null
        ? new FrameLengths(feed, sink)
        : new LinkLengths(wheel.scale(), counts, sink);
  }
}
