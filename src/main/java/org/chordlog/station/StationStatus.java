package org.chordlog.station;

import java.util.Map;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * A station as it stands: its link, what the indicator says of itself, its counters, and what it
 * works on. {@code message} is a sentence for the operator; {@code sinceMicros} is when the link
 * came into its state; {@code doubt} what the stream shows that can't be, with what to do; {@code
 * question} what the operator is asked about the last depth.
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
    PlaceNow place,
    @Nullable Long bridgeId,
    @Nullable Long zeroId,
    boolean zeroStale,
    boolean zeroMoved,
    @Nullable Sentence doubt,
    @Nullable Sentence question) {
  public int piece() {
    return place.piece();
  }

  public String position() {
    return place.position();
  }

  /**
   * Where the next reading belongs, whether masters or a study of the gauge are measured instead,
   * and who measures (null until somebody says so). Piece 0 without a job.
   */
  public record PlaceNow(
      int piece,
      String position,
      int pass,
      boolean onMasters,
      @Nullable StudyNow study,
      @Nullable String person) {}

  /** The study that is running instead of a job, and its next step of how many; 0 when complete. */
  public record StudyNow(long id, int step, int of) {}

  /** States of a link. */
  public enum LinkState {
    WAITING,
    OPEN,
    /** Bytes come, but no value can be read. */
    UNREADABLE,
    /** Values come, but none of the channel that measures. */
    OTHER_CHANNEL,
    SILENT,
    LOST,
    STOPPED
  }

  /**
   * Counters since the start. {@code pendingReadings} wait for their commit; {@code dropped…} could
   * not be stored; {@code reopenings} counts how often the link came back.
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
