package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.DoubleStream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SpanAdviceTest {
  private static final Section FLAT = new Section.Flat(10, 60);

  private static List<SpanOption> options(
      double radius, Face face, @Nullable Double length, double... spans) {
    Indicator indicator = new Indicator(0.01, 0.02, 12.5);
    return new SpanAdvice(indicator, FLAT, face, face, radius, 12, length)
        .of(DoubleStream.of(spans).mapToObj(SpanAdviceTest::bridge).toList());
  }

  private static Bridge bridge(double span) {
    return new Bridge(1, "span " + span, new Bridge.Span(span, 0.02), new Bridge.Feet(5, 0), 0);
  }

  @Test
  void theLongestThatReachesIsRecommendedAndTheOthersSayWhyNot() {
    List<SpanOption> options = options(1800, Face.OUTER, null, 100, 200, 400, 600);
    assertEquals(
        List.of(false, false, true, false), options.stream().map(SpanOption::recommended).toList());
    assertTrue(options.get(3).reasons().get(0).toString().contains("beyond the travel 12.5 mm"));
  }

  @Test
  void theFeetMustStandOnThePiece() {
    String reason = options(1800, Face.OUTER, 300.0, 400).get(0).reasons().get(0).toString();
    assertEquals("feet touch 398.9 mm apart, the piece's chord is 299.7 mm", reason);
    assertTrue(options(1800, Face.OUTER, 420.0, 400).get(0).reachable());
  }

  @Test
  void feetTooFarApartForTheBendAndFlatAreSaidToBe() {
    assertEquals(
        "[the radius is too tight for the feet to go into]",
        options(104, Face.INNER, null, 200).get(0).reasons().toString());
    assertEquals(
        List.of(Sentence.plain("can't tell this radius from flat")),
        options(200_000, Face.OUTER, null, 50).get(0).reasons());
  }

  /** Common practice, no source: 2 mm is 625 mm on a span of 100 mm, 2 500 mm on 200 mm. */
  @ParameterizedTest
  @CsvSource({"100, 625", "200, 2500"})
  void theTwoMillimetreRule(double span, double radius) {
    double depth = Chord.depthMm(1 / radius, span, 0);
    assertEquals(SpanAdvice.COMMON_LEAST_DEPTH_MM, depth, 0.005);
    assertEquals(
        1,
        options(radius * 1.1, Face.OUTER, null, span).get(0).remarks().stream()
            .filter(remark -> remark.toString().contains("2 mm"))
            .count());
  }
}
