package org.chordlog.radius;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.RandomDistribution;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;

/** Random set-ups of the trade's sizes; invented. */
final class SetUps {
  private SetUps() {}

  /** A set-up, a radius on the measured face that it can reach, and the scatter of a reading. */
  record Case(SetUp setUp, double radiusMm, long scatterNm, int sampleCount) {
    double depthMm() {
      double signed = Faces.sign(setUp.measuredFace()) / radiusMm;
      return Chord.depthMm(signed, setUp.bridge().spanMm(), setUp.bridge().footRadiusMm());
    }
  }

  static Arbitrary<Case> cases(double mostSkewDegrees) {
    return Combinators.combine(
            bridges(mostSkewDegrees),
            Arbitraries.of(0.001, 0.005, 0.01),
            Arbitraries.integers().between(10, 40),
            Arbitraries.of(Face.OUTER, Face.INNER),
            Arbitraries.of(Face.class),
            Arbitraries.doubles().between(3, 30).ofScale(6),
            Arbitraries.longs().between(2_000, 40_000))
        .as(SetUps::of);
  }

  private static Arbitrary<Bridge> bridges(double mostSkewDegrees) {
    return Combinators.combine(
            Arbitraries.doubles().between(60, 400).ofScale(6),
            Arbitraries.doubles().between(0.005, 0.1).ofScale(6),
            Arbitraries.doubles().between(0, 8).ofScale(6),
            skews(mostSkewDegrees))
        .as(
            (span, uSpan, foot, skew) ->
                new Bridge(
                    1, "B", new Bridge.Span(span, uSpan), new Bridge.Feet(foot, 0.01), skew));
  }

  private static Arbitrary<Double> skews(double mostDegrees) {
    return mostDegrees == 0
        ? Arbitraries.just(0.0)
        : Arbitraries.doubles()
            .between(0, mostDegrees)
            .ofScale(6)
            .withDistribution(RandomDistribution.uniform());
  }

  private static Case of(
      Bridge bridge,
      double resolution,
      int count,
      Face measured,
      Face specified,
      double radiusInSpans,
      long scatter) {
    Indicator indicator = new Indicator(resolution, resolution, 100);
    Zero zero = new Zero(1, "s", 1, 0, scatter / 2, count, new Recorded(0, "me"));
    Section tube = new Section.RoundTube(bridge.spanMm() / 4, 2);
    SetUp setUp = new SetUp(bridge, indicator, zero, null, tube, measured, specified);
    return new Case(setUp, radiusInSpans * bridge.spanMm(), scatter, count);
  }
}
