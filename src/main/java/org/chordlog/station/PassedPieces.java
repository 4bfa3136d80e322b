package org.chordlog.station;

import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.MeanBend;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.Refused;
import org.chordlog.profile.StoredPiece;
import org.jspecify.annotations.Nullable;

/** Makes of a piece that ran through a depth with what was found along it, or says why it can't. */
final class PassedPieces {
  private static final Sentence CHANGED =
      Sentence.plain("Zero, bridge or job changed while the piece ran through.");

  private final FeedSettings feed;
  private final WatchedClock clock;

  /** What came of it. */
  sealed interface Result {
    record Measured(CapturedDepth depth, Along along) implements Result {}

    record NotMeasured(Rejected why) implements Result {}
  }

  PassedPieces(FeedSettings feed, WatchedClock clock) {
    this.feed = feed;
    this.clock = clock;
  }

  Result of(Passage.Ran ran, WorkSnapshot work) {
    PieceRun run = ran.run();
    if (run.fault() == null && !ran.by().equals(work.computed())) {
      return not(run, Reason.GAP, CHANGED);
    }
    Specification specification = work.job() == null ? null : work.job().specification();
    EvaluationSettings settings = settings(ran, specification);
    PieceOutcome outcome = new PieceEvaluation(settings).of(run);
    return outcome instanceof PieceOutcome.Measured measured
        ? measured(ran, settings, measured, work.zeroNm())
        : not(run, ((PieceOutcome.NotMeasured) outcome).why());
  }

  private EvaluationSettings settings(Passage.Ran ran, @Nullable Specification specification) {
    return new EvaluationSettings(
        ran.by().model(),
        ran.source(),
        feed.lengthFace(ran.by().setUp().measuredFace()),
        feed.known(),
        specification,
        specification == null ? DecideBy.MEAN : specification.decideBy());
  }

  private Result measured(
      Passage.Ran ran, EvaluationSettings settings, PieceOutcome.Measured piece, long zeroNm) {
    PieceRun run = ran.run();
    MeanBend mean = piece.result().mean();
    CapturedDepth depth =
        new CapturedDepth(
            CaptureMode.PASSING,
            mean.depthNm() + zeroNm,
            mean.scatterNm(),
            mean.windows(),
            new CapturedDepth.SampleRange(run.firstSequence(), run.lastSequence()),
            new CapturedDepth.Moment(run.endedNanos(), clock.microsAt(run.endedNanos())));
    return new Result.Measured(
        depth,
        new Along(
            ran.by(),
            mean.radius(),
            piece.result().inside().decision(),
            StoredPiece.of(run, settings)));
  }

  private static Result not(PieceRun run, Refused why) {
    return not(run, reason(why.reason()), why.detail());
  }

  private static Result not(PieceRun run, Reason reason, Sentence detail) {
    return new Result.NotMeasured(new Rejected(reason, run.endedNanos(), detail));
  }

  private static Reason reason(Refused.Reason reason) {
    return switch (reason) {
      case PIECE_TOO_SHORT -> Reason.PIECE_TOO_SHORT;
      case NO_FULL_BEND -> Reason.NO_FULL_BEND;
      case NO_BEND -> Reason.FLAT;
      case WRONG_FACE -> Reason.WRONG_FACE;
      case PIECES_NOT_TOLD -> Reason.PIECES_NOT_TOLD;
      case LENGTH_DEAD -> Reason.LENGTH_DEAD;
      case LENGTH_REVERSED -> Reason.LENGTH_REVERSED;
      case LENGTH_JUMPED -> Reason.LENGTH_JUMPED;
      case NO_LENGTH -> Reason.NO_LENGTH;
      case OUTSIDE_TRAVEL -> Reason.OUTSIDE_TRAVEL;
      case GAP -> Reason.GAP;
      case FREE_AIR_UNKNOWN -> Reason.FREE_AIR_UNKNOWN;
    };
  }
}
