package org.chordlog.station;

import java.util.Map;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * A station's state at one moment: its link, what the indicator says of itself, its counters, and
 * what it works on. {@code message} is a sentence for the operator; {@code sinceMicros} is when the
 * link came into its state; {@code doubt} what the stream shows that can't be, with what to do;
 * {@code question} what the operator is asked about the last depth; {@code length} the link on
 * which the length along the feed comes, null where it has none of its own.
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
    @Nullable InDoubt doubt,
    @Nullable OpenQuestion question,
    @Nullable LengthNow length) {
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

  /** What the stream shows that can't be: the kind of it, and a sentence with what to do. */
  public record InDoubt(Incident.Kind kind, Sentence words) {}

  /** The study that is running instead of a job, and its next step of how many; 0 when complete. */
  public record StudyNow(long id, int step, int of) {}

  /** The link of a length, as that of the depth; {@code known}: whether depths have lengths now. */
  public record LengthNow(
      LinkState link,
      String message,
      String target,
      long sinceMicros,
      boolean known,
      DelayNow delay) {
    /** What is amiss, in a sentence; empty where nothing is. */
    public String words() {
      if (link != LinkState.OPEN) {
        return "no length along the feed: " + message;
      }
      return known ? "" : "no length along the feed: " + target + " sends no counts.";
    }
  }

  /**
   * How many ms later depths come than the counts that belong to them, its standard uncertainty
   * where it was found, whether it is being looked for, and what came of that.
   */
  public record DelayNow(
      double ms,
      @Nullable Double uncertaintyMs,
      DelayOrigin origin,
      boolean searching,
      String said) {}

  /** Where a delay is from; one that is not known is taken as 0. */
  public enum DelayOrigin {
    NOT_KNOWN,
    STATED,
    FOUND
  }

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
