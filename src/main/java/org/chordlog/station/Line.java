package org.chordlog.station;

import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sample;
import org.chordlog.profile.LivePiece;
import org.jspecify.annotations.Nullable;

/**
 * A gauge fixed in a line: follows the section that runs through and makes a reading of each piece.
 * Used by the station's thread alone, but for {@link #live()}.
 */
final class Line {
  private final StationParts parts;
  private final Passage passage;
  private final @Nullable LengthDelay delay;
  private final PassedPieces pieces;
  private final PieceUnderWay underWay;
  private final Runnable changed;

  /** {@code changed} is told when the state of the station is another one. */
  Line(StationSettings settings, FeedSettings feed, StationParts parts, Runnable changed) {
    this.parts = parts;
    this.changed = changed;
    delay = parts.counts == null ? null : parts.counts.delay();
    passage = new Passage(settings, feed, parts.current, delay);
    pieces = new PassedPieces(feed, parts.clock);
    underWay = new PieceUnderWay(settings.name(), parts.around);
  }

  /** Says what a kill of the service has cost, once. */
  void started() {
    String interrupted = underWay.tellInterrupted(parts.clock.micros());
    if (interrupted != null) {
      long nanos = parts.clock.nanos();
      var unused =
          parts.intake.refused(
              new CaptureOutcome.Rejected(CaptureOutcome.Reason.GAP, nanos, interrupted));
    }
  }

  void offer(Sample depth, long lengthNm, Pipeline pipeline) {
    StationStatus.@Nullable DelayNow before = delay == null ? null : delay.now();
    passage.offer(
        depth,
        lengthNm,
        ran -> {
          pipeline.flushTrace();
          passed(ran, pipeline.lastFrameHex());
        });
    underWay.is(passage.running(), depth.wallMicros());
    if (delay != null && !delay.now().equals(before)) {
      changed.run();
    }
  }

  /** From here on lengths are measured, or not known: a piece under way gives no reading. */
  void lengthKnown(boolean known, String rawHex) {
    passage.lengthKnown(known, ran -> passed(ran, rawHex));
    underWay.is(false, parts.clock.micros());
  }

  private void passed(Passage.Ran ran, String rawHex) {
    parts.current.refresh(ran.run().endedNanos());
    PassedPieces.Result result = pieces.of(ran, parts.current.work());
    if (result instanceof PassedPieces.Result.Measured measured) {
      var unused = parts.intake.passed(measured.depth(), measured.along(), rawHex);
    } else {
      var unused = parts.intake.refused(((PassedPieces.Result.NotMeasured) result).why());
    }
  }

  /** The stream broke off. */
  void gap(String rawHex) {
    passage.gap(ran -> passed(ran, rawHex));
    underWay.is(false, parts.clock.micros());
  }

  /** The piece that runs through now; null if none. Any thread. */
  @Nullable LivePiece live() {
    return passage.live();
  }
}
