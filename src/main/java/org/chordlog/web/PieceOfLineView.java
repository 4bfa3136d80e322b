package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.LengthInside;
import org.chordlog.profile.PieceMark;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.Shape;
import org.chordlog.profile.Uniformity;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** What was found along a piece that ran through; places from where its touch began. */
record PieceOfLineView(
    long readingId,
    long jobId,
    int piece,
    String at,
    @Nullable Double radiusMm,
    @Nullable Double lowerMm,
    @Nullable Double upperMm,
    @JsonPropertyDescription("how long the plunger touched") double touchedMm,
    double evaluatedFromMm,
    double evaluatedToMm,
    @JsonPropertyDescription("each place is a mean over the span") double spanMm,
    @JsonPropertyDescription("how often it ran through") int passes,
    Inside inside,
    Along along,
    @JsonPropertyDescription("what must be known of it, in words") List<Sentence> notes,
    ShapeView shape,
    @JsonPropertyDescription("null where the job has no developed length or angle")
        @Nullable ClosingOfLine closing) {
  /** Against the limits. */
  record Inside(
      DecideBy decideBy,
      Decision decision,
      Decision byMean,
      Decision everywhere,
      @JsonPropertyDescription("of the length, by more than the guard band") double insidePercent,
      @Nullable Double longestOutsideFromMm,
      @Nullable Double longestOutsideToMm) {
    static Inside of(LengthInside inside, DecideBy decideBy) {
      LengthInside.Stretch longest = inside.longestOutside();
      return new Inside(
          decideBy,
          inside.decision(),
          inside.byMean(),
          inside.everywhere(),
          100 * inside.shareInside(),
          longest == null ? null : longest.fromMm(),
          longest == null ? null : longest.toMm());
    }
  }

  /** How even it is, percent of its mean curvature; uncertainties with coverage factor 2. */
  record Along(
      double rangePercent,
      @JsonPropertyDescription("of the range, what noise alone makes") double noisePercent,
      @JsonPropertyDescription("end less start") double trendPercent,
      double trendUncertaintyPercent,
      @Nullable Double startPercent,
      @Nullable Double endPercent,
      @Nullable Double endsUncertaintyPercent) {
    static Along of(Uniformity u) {
      Double ends = u.endsUncertaintyPercent();
      return new Along(
          u.rangePercent(),
          u.rangeOfNoisePercent(),
          u.trendPercent(),
          2 * u.trendUncertaintyPercent(),
          u.startPercent(),
          u.endPercent(),
          ends == null ? null : (Double) (2 * ends));
    }
  }

  /** A length or an angle with its expanded uncertainty, coverage factor 2. */
  record Measure(double value, double uncertainty) {
    static Measure of(Shape.Length length) {
      return new Measure(length.value(), 2 * length.standardUncertainty());
    }
  }

  /** The curve that the profile draws, its ends taken as straight. */
  record ShapeView(Measure chordMm, Measure riseMm, Measure turnDegrees) {
    static ShapeView of(Shape shape) {
      return new ShapeView(
          Measure.of(shape.chord()), Measure.of(shape.rise()), Measure.of(shape.turnDegrees()));
    }
  }

  static PieceOfLineView of(PieceOfLine piece) {
    PieceResult result = piece.result();
    Shape shape = Shape.of(piece.profile(), piece.part(), result, piece.settings());
    return new PieceOfLineView(
        piece.reading().id(),
        piece.reading().jobId(),
        piece.reading().piece(),
        Times.iso(piece.reading().wallMicros()),
        result.mean().radius().radiusMm(),
        result.mean().radius().lowerMm(),
        result.mean().radius().upperMm(),
        piece.part().toMm() - piece.part().fromMm(),
        result.zone().fromMm() - piece.part().fromMm(),
        result.zone().toMm() - piece.part().fromMm(),
        piece.settings().model().spanMm(),
        piece.passes(),
        Inside.of(result.inside(), piece.settings().decideBy()),
        Along.of(result.uniformity()),
        result.marks().stream().map(PieceMark::words).toList(),
        ShapeView.of(shape),
        ClosingOfLine.of(piece));
  }
}
