package org.chordlog.station;

import java.util.Map;
import org.chordlog.capture.CaptureOutcome;
import org.jspecify.annotations.Nullable;

/**
 * A station as it stands: its link, what the indicator says of itself, its counters, and what it
 * works on. {@code message} is a sentence for the operator; {@code sinceMicros} is when the link
 * came into its state.
 */
public record StationStatus(
    String station,
    String machine,
    LinkState link,
    String message,
    String target,
    long sinceMicros,
    @Nullable String indicatorState,
    Counts counts,
    @Nullable Long jobId,
    int piece,
    String position,
    @Nullable Long bridgeId,
    @Nullable Long zeroId,
    boolean zeroStale) {
  /** States of a link. */
  public enum LinkState {
    WAITING,
    OPEN,
    SILENT,
    LOST,
    STOPPED
  }

  /**
   * Counters since the start. {@code pendingReadings} wait for their commit; {@code dropped…} could
   * not be kept; {@code reopenings} counts how often the link came back.
   */
  public record Counts(
      long samples,
      long damagedFrames,
      long readings,
      long pendingReadings,
      long droppedReadings,
      long droppedSamples,
      long reopenings,
      Map<CaptureOutcome.Reason, Long> rejections) {
    public Counts {
      rejections = Map.copyOf(rejections);
    }
  }
}
