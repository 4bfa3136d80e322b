package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

final class ShapeTest {
  private record Drawn(PieceRun run, PieceResult result) {}

  private static Drawn drawn(double length, DoubleUnaryOperator curvature) {
    Streams stream = Streams.usual().piece(length, curvature);
    stream.rate = 20;
    stream.rest(1);
    PieceRun run = stream.go(length + 300, 100).only();
    return new Drawn(run, Streams.measured(Streams.evaluated(run)));
  }

  private static double relative(PieceResult result) {
    double u = result.mean().radius().standardUncertaintyPerMm();
    return u / result.mean().bendPerMm();
  }

  /** Straight ends, an arc between them: chord and rise by elementary geometry. */
  @Test
  void aHoopWithStraightEnds() {
    Drawn drawn = drawn(3000, Streams.bent(3000, 280, 80, 1800));
    Shape shape =
        Shape.of(
            drawn.run().profile(), drawn.run().part(), drawn.result(), Streams.usualSettings());
    ArcPath exact = exact(drawn.run().part().lengthMm());
    int end = exact.arcs();
    double chord = Math.hypot(exact.x[end], exact.y[end]);
    assertEquals(chord, shape.chord().value(), 0.3);
    double turn = Math.toDegrees(exact.heading[end]);
    assertEquals(turn, shape.turnDegrees().value(), 0.02);
    assertEquals(relative(drawn.result()) * turn, shape.turnDegrees().standardUncertainty(), 0.02);
    assertFalse(shape.points().get(3).measured());
    assertTrue(shape.points().get(shape.points().size() / 2).measured());
    assertTrue(shape.rise().value() > 500 && shape.rise().standardUncertainty() > 0);
  }

  private static ArcPath exact(double touchMm) {
    double start = (3000 - touchMm) / 2;
    int n = 6000;
    double[] lengths = new double[n];
    double[] curvatures = new double[n];
    DoubleUnaryOperator curvature = Streams.bent(3000, 280, 80, 1800);
    for (int i = 0; i < n; i++) {
      lengths[i] = touchMm / n;
      curvatures[i] = curvature.applyAsDouble(start + (i + 0.5) * touchMm / n);
    }
    return new ArcPath(lengths, curvatures);
  }

  /**
   * A ring bent all around to its radius closes; what all places share opens it along by S times
   * the relative uncertainty, since a ring of developed length S = 2πR is short by 2πδR.
   */
  @Test
  void aRingThatClosesAndHowSurely() {
    double ring = 2 * Math.PI * 1800;
    double length = ring + 2 * 300;
    Drawn drawn = drawn(length, Streams.bent(length, 300, 1, 1800));
    Shape shape = Shape.ofRing(drawn.run().profile(), drawn.result(), Streams.usualSettings());
    assertEquals(0, shape.gapAlong().value(), 18, "edges are placed to some mm");
    assertEquals(360, shape.turnDegrees().value(), 0.6);
    assertEquals(
        ring * relative(drawn.result()),
        shape.gapAlong().standardUncertainty(),
        0.02 * ring * relative(drawn.result()));
    assertTrue(
        shape.offsetAcross().standardUncertainty() < shape.gapAlong().standardUncertainty() / 3);
  }

  /** Bent to a larger radius a ring of the same length stays open: 2π(R − R₀) along. */
  @Test
  void aRingBentTooSlackHasAGap() {
    double ring = 2 * Math.PI * 1800;
    double length = ring + 2 * 300;
    Drawn close = drawn(length, Streams.bent(length, 300, 1, 1800));
    Drawn slack = drawn(length, Streams.bent(length, 300, 1, 1805));
    double opened =
        Shape.ofRing(slack.run().profile(), slack.result(), Streams.usualSettings())
                .gapAlong()
                .value()
            - Shape.ofRing(close.run().profile(), close.result(), Streams.usualSettings())
                .gapAlong()
                .value();
    assertEquals(2 * Math.PI * 5, opened, 4);
  }

  /** Sampling errors are independent from window to window: they add as squares of their levers. */
  @Test
  void independentErrorsAddUpLess() {
    int windows = 57;
    double ring = 2 * Math.PI * 1800;
    double[] lengths = new double[windows * 10];
    double[] curvatures = new double[windows * 10];
    Arrays.fill(lengths, ring / lengths.length);
    Arrays.fill(curvatures, 1 / 1800.0);
    ArcPath path = new ArcPath(lengths, curvatures);
    double sum = 0;
    for (int w = 0; w < windows; w++) {
      double lever = 0;
      for (int i = 10 * w; i < 10 * (w + 1); i++) {
        lever += lengths[i] * (path.y[path.arcs()] - path.middleY(i)) * 5e-4 / 1800;
      }
      sum += lever * lever;
    }
    // S u/√n for the mean curvature alone, times √1.5 for the levers 1 − cos around a ring
    assertEquals(0.749005402 * Math.sqrt(1.5), Math.sqrt(sum), 0.01);
  }

  /** A wheel on the inner face runs a shorter way than the outer face that is measured. */
  @Test
  void lengthsAlongAnotherFaceAreConverted() {
    assertEquals(100 * 1800 / (1800 - 60.3), Arcs.onMeasuredFace(100, 1 / 1800.0, -60.3), 1e-9);
    assertEquals(100, Arcs.onMeasuredFace(100, 1 / 1800.0, 0), 1e-12);
  }
}
