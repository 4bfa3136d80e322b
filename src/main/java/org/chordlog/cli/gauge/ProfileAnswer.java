package org.chordlog.cli.gauge;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.LengthInside;
import org.chordlog.profile.LocalRadius;
import org.chordlog.profile.PieceMark;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.Refused;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.chordlog.profile.Shape;
import org.chordlog.profile.Uniformity;
import org.jspecify.annotations.Nullable;

/** What {@code profile} answers: the pieces, and the rollers over all of them. */
record ProfileAnswer(
    List<PieceAnswer> pieces,
    @Nullable RollersAnswer rollersTogether,
    @Nullable RollersAnswer rollersTwiceATurn,
    List<RollerTrend> rollerTrends) {
  static ProfileAnswer of(List<LineRun.Piece> pieces, LineRun run) {
    List<PieceAnswer> answers = new ArrayList<>();
    for (LineRun.Piece piece : pieces) {
      answers.add(PieceAnswer.of(answers.size() + 1, piece));
    }
    return new ProfileAnswer(answers, together(run.pooled()), together(run.twice()), run.trends());
  }

  private static @Nullable RollersAnswer together(@Nullable RollerVerdict verdict) {
    return verdict == null ? null : RollersAnswer.of(verdict);
  }

  boolean whole() {
    return !pieces.isEmpty() && pieces.stream().allMatch(piece -> piece.refused() == null);
  }

  /** A piece, or a stretch of endless stock; places from where its touch began. */
  record PieceAnswer(
      int piece,
      long fromRow,
      long toRow,
      double fromMm,
      double toMm,
      @Nullable Double radiusMm,
      @Nullable Double lowerMm,
      @Nullable Double upperMm,
      @Nullable Double evaluatedFromMm,
      @Nullable Double evaluatedToMm,
      @Nullable LengthInside inside,
      @Nullable Uniformity uniformity,
      List<MarkAnswer> marks,
      List<RollerAnswer> rollers,
      @Nullable Sentence rollerFinding,
      @Nullable ShapeAnswer shape,
      List<PlaceAnswer> places,
      @Nullable Refused refused) {
    static PieceAnswer of(int number, LineRun.Piece piece) {
      PieceOutcome outcome = piece.outcome();
      return outcome instanceof Measured measured
          ? measured(number, piece, measured.result())
          : refused(number, piece, ((PieceOutcome.NotMeasured) outcome).why());
    }

    private static PieceAnswer refused(int number, LineRun.Piece piece, Refused why) {
      return new PieceAnswer(
          number,
          piece.run().firstSequence(),
          piece.run().lastSequence(),
          piece.outcome().part().fromMm(),
          piece.outcome().part().toMm(),
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          List.of(),
          List.of(),
          null,
          null,
          List.of(),
          why);
    }

    private static PieceAnswer measured(int number, LineRun.Piece piece, PieceResult result) {
      RadiusEstimate radius = result.mean().radius();
      RollerVerdict rollers = piece.rollers();
      return new PieceAnswer(
          number,
          piece.run().firstSequence(),
          piece.run().lastSequence(),
          piece.outcome().part().fromMm(),
          piece.outcome().part().toMm(),
          radius.radiusMm(),
          radius.lowerMm(),
          radius.upperMm(),
          result.zone().fromMm(),
          result.zone().toMm(),
          result.inside(),
          result.uniformity(),
          result.marks().stream().map(MarkAnswer::of).toList(),
          rollers == null ? List.of() : RollersAnswer.of(rollers).rollers(),
          rollers == null ? null : RollersAnswer.of(rollers).finding(),
          piece.shape() == null ? null : ShapeAnswer.of(piece.shape()),
          result.places().stream().map(PlaceAnswer::of).toList(),
          null);
    }
  }

  /** A mark with its words. */
  record MarkAnswer(PieceMark.Kind kind, double placeMm, double amount, Sentence words) {
    static MarkAnswer of(PieceMark mark) {
      return new MarkAnswer(mark.kind(), mark.placeMm(), mark.amount(), mark.words());
    }
  }

  /** The radius at a place. */
  record PlaceAnswer(
      double placeMm,
      @Nullable Double radiusMm,
      double lowerMm,
      @Nullable Double upperMm,
      Decision decision) {
    static PlaceAnswer of(LocalRadius place) {
      RadiusEstimate radius = place.radius();
      return new PlaceAnswer(
          place.placeMm(), radius.radiusMm(), radius.lowerMm(), radius.upperMm(), place.decision());
    }
  }

  /** Chord, rise and turn of the curve that the profile draws. */
  record ShapeAnswer(
      double chordMm,
      double chordUncertaintyMm,
      double riseMm,
      double riseUncertaintyMm,
      double turnDegrees,
      double turnUncertaintyDegrees) {
    static ShapeAnswer of(Shape shape) {
      return new ShapeAnswer(
          shape.chord().value(),
          shape.chord().standardUncertainty(),
          shape.rise().value(),
          shape.rise().standardUncertainty(),
          shape.turnDegrees().value(),
          shape.turnDegrees().standardUncertainty());
    }
  }

  /** A roller: what is seen of it, and its ripple where that can be told. */
  record RollerAnswer(
      String name,
      double wavelengthMm,
      double shownShare,
      @Nullable Sentence unseen,
      @Nullable Double amplitudePercent,
      @Nullable Double uncertaintyPercent,
      @Nullable Double probability,
      boolean named) {}

  /** The rollers over so many pieces. */
  record RollersAnswer(int pieces, Sentence finding, List<RollerAnswer> rollers) {
    static RollersAnswer of(RollerVerdict verdict) {
      return new RollersAnswer(
          verdict.pieces(),
          ProfileText.finding(verdict),
          verdict.sights().stream().map(sight -> roller(verdict, sight)).toList());
    }

    private static RollerAnswer roller(RollerVerdict verdict, RollerSight sight) {
      RollerRipple ripple = verdict.ripple(sight.roller());
      boolean named =
          verdict.finding() instanceof Finding.Named found && found.roller().equals(sight.roller());
      return new RollerAnswer(
          sight.roller().name(),
          sight.wavelengthMm(),
          sight.shownShare(),
          sight.unseen(),
          ripple == null ? null : ripple.amplitudePercent(),
          ripple == null ? null : ripple.uncertaintyPercent(),
          ripple == null ? null : ripple.probability(),
          named);
    }
  }
}
