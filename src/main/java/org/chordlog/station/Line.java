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
  private final PassedPieces pieces;
  private final PieceUnderWay underWay;

  Line(StationSettings settings, FeedSettings feed, StationParts parts) {
    this.parts = parts;
    passage = new Passage(settings, feed, parts.desk);
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
    passage.offer(
        depth,
        lengthNm,
        ran -> {
          pipeline.flushTrace();
          passed(ran, pipeline.lastFrameHex());
        });
    underWay.is(passage.running(), depth.wallMicros());
  }

  private void passed(Passage.Ran ran, String rawHex) {
    parts.desk.refresh(ran.run().endedNanos());
    PassedPieces.Result result = pieces.of(ran, parts.desk.work());
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
