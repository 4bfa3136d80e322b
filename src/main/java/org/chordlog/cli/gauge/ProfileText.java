package org.chordlog.cli.gauge;

import java.util.Locale;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.LengthInside;
import org.chordlog.profile.PieceMark;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.chordlog.profile.Shape;
import org.chordlog.profile.Uniformity;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** Pieces that ran through the gauge, in words for a terminal. */
record ProfileText(LengthOptions lengths, double spanMm) {
  String piece(int number, LineRun.Piece piece) {
    StringBuilder text = new StringBuilder();
    String rows = piece.run().firstSequence() + " to " + piece.run().lastSequence();
    int stretch = piece.outcome().part().stretch();
    String name = stretch > 0 ? "Stretch " + stretch : "Piece " + number;
    line(
        text,
        "%s (rows %s, %s)",
        name,
        rows,
        size(piece.outcome().part().toMm() - piece.outcome().part().fromMm()));
    if (piece.outcome() instanceof Measured measured) {
      result(text, measured.result());
      if (piece.shape() != null) {
        shape(text, piece.shape());
      }
      if (piece.rollers() != null) {
        line(text, "  rollers: %s", said(finding(piece.rollers())));
        ripples(text, piece.rollers());
      }
    } else if (piece.outcome() instanceof PieceOutcome.NotMeasured not) {
      line(text, "  no result: %s", said(not.why().detail()));
    }
    return text.toString();
  }

  private static void line(StringBuilder text, String form, Object... values) {
    text.append(String.format(Locale.ROOT, form, values)).append('\n');
  }

  private String said(Sentence sentence) {
    return sentence.in(lengths.lengths());
  }

  private String size(double mm) {
    return lengths.textWithUnit(mm, 0);
  }

  private void result(StringBuilder text, PieceResult result) {
    line(text, "  mean radius %s", new RadiusText(lengths).line(result.mean().radius()));
    line(
        text,
        "  evaluated from %s to %s; each place is a mean over %s",
        size(result.zone().fromMm()),
        size(result.zone().toMm()),
        size(spanMm));
    if (result.inside().decision() != Decision.NO_LIMITS) {
      inside(text, result.inside());
    }
    uniformity(text, result.uniformity());
    for (PieceMark mark : result.marks()) {
      line(text, "  note: %s", said(mark.words()));
    }
  }

  private void inside(StringBuilder text, LengthInside inside) {
    line(
        text,
        "  %s (by its mean: %s; everywhere: %s)",
        RadiusText.verdict(inside.decision()),
        word(inside.byMean()),
        word(inside.everywhere()));
    LengthInside.Stretch outside = inside.longestOutside();
    line(
        text,
        "  inside the limits by more than the guard band: %.0f %% of the length%s",
        100 * inside.shareInside(),
        outside == null
            ? ""
            : "; longest stretch outside from "
                + size(outside.fromMm())
                + " to "
                + size(outside.toMm()));
  }

  private static String word(Decision decision) {
    return Words.of(decision).toLowerCase(Locale.ROOT);
  }

  private static void uniformity(StringBuilder text, Uniformity along) {
    line(
        text,
        "  curvature along it: range %.2f %%, of which noise alone would make %.2f %%;"
            + " end less start %s ± %.2f %%",
        along.rangePercent(),
        along.rangeOfNoisePercent(),
        Decimals.signed(along.trendPercent(), 2),
        2 * along.trendUncertaintyPercent());
    Double start = along.startPercent();
    Double end = along.endPercent();
    Double u = along.endsUncertaintyPercent();
    if (start != null && end != null && u != null) {
      line(
          text,
          "  start less rest %s %%, end less rest %s %%, ± %.2f",
          Decimals.signed(start, 2),
          Decimals.signed(end, 2),
          2 * u);
    }
  }

  private void shape(StringBuilder text, Shape shape) {
    line(
        text,
        "  chord %s ± %s, rise %s ± %s, turn %s ± %.2f degrees (ends taken as straight)",
        lengths.text(shape.chord().value(), 1),
        lengths.textWithUnit(2 * shape.chord().standardUncertainty(), 1),
        lengths.text(shape.rise().value(), 1),
        lengths.textWithUnit(2 * shape.rise().standardUncertainty(), 1),
        Decimals.fixed(shape.turnDegrees().value(), 2),
        2 * shape.turnDegrees().standardUncertainty());
  }

  private void ripples(StringBuilder text, RollerVerdict verdict) {
    for (RollerRipple ripple : verdict.ripples()) {
      line(
          text,
          "    %s: ripple of %s, %.3f ± %.3f %% of curvature, p = %.2g",
          ripple.roller().name(),
          size(ripple.wavelengthMm()),
          ripple.amplitudePercent(),
          2 * ripple.uncertaintyPercent(),
          ripple.probability());
    }
    for (RollerSight sight : verdict.sights()) {
      if (sight.unseen() != null) {
        line(text, "    %s: not seen, %s", sight.roller().name(), said(sight.unseen()));
      }
    }
  }

  String together(RollerVerdict verdict) {
    StringBuilder text = new StringBuilder();
    line(text, "Rollers over %d pieces: %s", verdict.pieces(), said(finding(verdict)));
    ripples(text, verdict);
    return text.toString();
  }

  /** Two waves a turn, as a roller makes that is out of round. */
  String twice(RollerVerdict verdict) {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "Twice a turn over %s: %s",
        Counted.of(verdict.pieces(), "piece"),
        said(finding(verdict)));
    ripples(text, verdict);
    return text.toString();
  }

  String trend(RollerTrend trend) {
    return String.format(
        Locale.ROOT,
        "Ripple of %s over %d pieces: %.2f ± %.2f %% of curvature%s%n",
        trend.roller(),
        trend.pieces(),
        trend.amplitudePercent(),
        2 * trend.uncertaintyPercent(),
        trend.beyond() ? ", beyond its limit for " + trend.beyondFor() : "");
  }

  /** Which roller makes a ripple, in a sentence without its full stop. */
  static Sentence finding(RollerVerdict verdict) {
    if (verdict.unfit() != null) {
      return Sentence.of("can't be told, %s", verdict.unfit());
    }
    if (verdict.finding() instanceof Finding.Named named) {
      return Sentence.of("the ripple of %s stands out", named.roller().name());
    }
    return verdict.finding() instanceof Finding.OneOfTwo two
        ? oneOf(two)
        : Sentence.plain("no roller's ripple stands out from neighbouring wavelengths");
  }

  private static Sentence oneOf(Finding.OneOfTwo two) {
    @Nullable Double needed = two.neededMm();
    return Sentence.of(
        "%s or %s makes a ripple; %s",
        two.first().name(),
        two.second().name(),
        needed == null
            ? "no length tells them apart: turn one by a known angle and compare"
            : Sentence.of("it takes %s evaluated to tell them apart", Quantity.fixed(needed, 0)));
  }
}
