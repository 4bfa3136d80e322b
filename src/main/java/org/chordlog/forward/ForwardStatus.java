package org.chordlog.forward;

import org.chordlog.store.FeedPage;

/**
 * The delivery to the plant at one moment. {@code problem}: a sentence, empty where all is well;
 * {@code rest}: what the plant does not have yet, as far as is known here; {@code
 * lastDeliveredMicros}: wall time of the newest batch, UTC µs, 0 before the first.
 */
public record ForwardStatus(
    ForwardState state,
    String plant,
    String problem,
    FeedPage.Rest rest,
    long lastDeliveredMicros,
    Counts counts) {
  /** Since the start. */
  public record Counts(long rows, long batches, long connections) {}
}
