package org.chordlog.radius;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * Which of the bridges at hand to use for a radius on a face and a tolerance of ± mm. {@code
 * pieceLengthMm} is the bent length along the measured face, null when it is no bound.
 */
public record SpanAdvice(
    Indicator indicator,
    Section section,
    Face measuredFace,
    Face specifiedFace,
    double radiusMm,
    double toleranceMm,
    @Nullable Double pieceLengthMm) {
  /** Common practice, no source: a span is used up to the radius where its depth falls to 2 mm. */
  public static final double COMMON_LEAST_DEPTH_MM = 2;

  public SpanAdvice {
    Check.positive("radiusMm", radiusMm);
    Check.positive("toleranceMm", toleranceMm);
    if (pieceLengthMm != null) {
      Check.positive("pieceLengthMm", pieceLengthMm);
    }
  }

  /** One option a bridge, in the given order; recommended is the largest tolerance / U. */
  public List<SpanOption> of(List<Bridge> bridges) {
    List<SpanOption> options = bridges.stream().map(this::option).toList();
    Optional<SpanOption> best =
        options.stream()
            .filter(SpanOption::reachable)
            .max(Comparator.comparingDouble(SpanAdvice::ratio));
    return options.stream()
        .map(o -> best.isPresent() && best.get().equals(o) ? o.withRecommendation() : o)
        .toList();
  }

  private static double ratio(SpanOption option) {
    Double ratio = option.toleranceOverU();
    return ratio == null ? 0 : ratio;
  }

  private SpanOption option(Bridge bridge) {
    SetUp setUp = new SetUp(bridge, indicator, null, null, section, measuredFace, specifiedFace);
    RadiusModel model = RadiusModel.of(setUp);
    double depthMm;
    try {
      depthMm = model.depthForMm(radiusMm);
    } catch (BadInput refusal) {
      Sentence why = Sentence.of("the radius %s", refusal.faults().get(0).problem());
      return SpanOption.refused(bridge, null, why);
    }
    Sentence reason = outOfReach(bridge, depthMm);
    return reason == null
        ? judged(bridge, model, depthMm)
        : SpanOption.refused(bridge, depthMm, reason);
  }

  private @Nullable Sentence outOfReach(Bridge bridge, double depthMm) {
    if (Math.abs(depthMm) > indicator.travelMm()) {
      return Sentence.of(
          "depth %s is beyond the travel %s",
          Quantity.fixed(depthMm, 2), Quantity.stated(indicator.travelMm()));
    }
    double there = Faces.convertMm(radiusMm, section, specifiedFace, measuredFace);
    double contact =
        bridge.spanMm() / (1 + Faces.sign(measuredFace) * bridge.footRadiusMm() / there);
    double chord = pieceChordMm(there);
    return contact > chord
        ? Sentence.of(
            "feet touch %s apart, the piece's chord is %s",
            Quantity.fixed(contact, 1), Quantity.fixed(chord, 1))
        : null;
  }

  private double pieceChordMm(double thereMm) {
    if (pieceLengthMm == null || pieceLengthMm >= Math.PI * thereMm) {
      return Double.POSITIVE_INFINITY;
    }
    return 2 * thereMm * Math.sin(pieceLengthMm / (2 * thereMm));
  }

  private SpanOption judged(Bridge bridge, RadiusModel model, double depthMm) {
    RadiusEstimate e = model.estimate(Length.nm(depthMm), 0, 1);
    Double radius = e.radiusMm();
    Double upper = e.upperMm();
    if (radius == null || upper == null) {
      return SpanOption.refused(
          bridge, depthMm, Sentence.plain("can't tell this radius from flat"));
    }
    double expanded = Math.max(upper - radius, radius - e.lowerMm());
    double ratio = toleranceMm / expanded;
    List<Sentence> remarks = remarks(depthMm, ratio);
    return new SpanOption(bridge, true, false, depthMm, expanded, ratio, List.of(), remarks);
  }

  private static List<Sentence> remarks(double depthMm, double ratio) {
    List<Sentence> remarks = new ArrayList<>();
    if (ratio <= 1) {
      remarks.add(
          Sentence.plain("U is no smaller than the tolerance: nothing could be shown to conform"));
    }
    if (Math.abs(depthMm) < COMMON_LEAST_DEPTH_MM) {
      remarks.add(
          Sentence.of(
              "depth below %s: a longer span is commonly used",
              Quantity.stated(COMMON_LEAST_DEPTH_MM)));
    }
    return remarks;
  }
}
