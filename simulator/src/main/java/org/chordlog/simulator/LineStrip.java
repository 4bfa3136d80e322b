package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.Face;
import org.chordlog.radius.Chord;
import org.chordlog.radius.Faces;
import org.chordlog.simulator.LineScenario.RunOut;
import org.chordlog.simulator.LineScenario.Seam;
import org.chordlog.simulator.LineScenario.Texture;

/**
 * Pieces that follow nose to tail, each mm of them: curvature of the measured face in the sense of
 * the bend, what the bridge shows of it (the second sum of the curvature, differenced over half the
 * span), and what the face's roughness and seams add to the depth.
 */
final class LineStrip {
  private static final double PERCENT = 0.01;

  private final LineScenario scenario;
  private final Random random;
  private final int half;
  private final int length;
  private final double[] curvature;
  private final double[] shown;
  private final double[] face;
  private final List<LineTruth.Builder> pieces = new ArrayList<>();

  LineStrip(LineScenario scenario, int firstPiece, Random random) {
    this.scenario = scenario;
    this.random = random;
    half = (int) (scenario.bridge().spanMm() / 2);
    int each = (int) Math.round(scenario.line().piece().lengthMm());
    length = each * scenario.line().feed().noseToTail();
    curvature = new double[length + 1];
    face = new double[length + 1];
    for (int i = 0; i < scenario.line().feed().noseToTail(); i++) {
      bend(firstPiece + i, i * each, each);
    }
    curvature[length] = curvature[length - 1];
    roughen();
    shown = triangleMeans();
    pieces.forEach(piece -> piece.shown(curvature, shown, half));
  }

  private void bend(int number, int from, int each) {
    LineScenario.Stock stock = scenario.line().piece();
    LineTruth.Builder truth = new LineTruth.Builder(number, from, each);
    truth.leadIn = drawn(stock.leadMm());
    truth.leadOut = drawn(stock.leadMm());
    truth.riseIn = drawn(stock.riseMm());
    truth.riseOut = drawn(stock.riseMm());
    truth.level =
        (1 + PERCENT * stock.levelSdPercent() * random.nextGaussian()) / measuredRadiusMm();
    pieces.add(truth);
    double[] wander = wander(each, scenario.line().texture());
    List<double[]> ripples = ripples(truth);
    for (int s = 0; s < each; s++) {
      double relative = 1 + wander[s];
      for (double[] ripple : ripples) {
        relative += ripple[0] * Math.cos(2 * Math.PI * s / ripple[1] + ripple[2]);
      }
      curvature[from + s] = truth.level * relative * truth.ramp(s);
    }
  }

  private double drawn(LineScenario.Range range) {
    return range.from() + (range.to() - range.from()) * random.nextDouble();
  }

  /** Radius of the measured face that was ordered. */
  private double measuredRadiusMm() {
    Scenario.Order job = scenario.job();
    return Faces.convertMm(job.targetMm(), job.tube(), job.specifiedFace(), job.measuredFace());
  }

  /** Wavelength along the measured face of a roller that turns once. */
  double wavelengthMm(RunOut roller) {
    Scenario.Order job = scenario.job();
    double side =
        Faces.convertMm(measuredRadiusMm(), job.tube(), job.measuredFace(), roller.side());
    return Math.PI * roller.diameterMm() * measuredRadiusMm() / side;
  }

  /** Amplitude, wavelength and phase of each roller that runs out. */
  private List<double[]> ripples(LineTruth.Builder truth) {
    List<double[]> ripples = new ArrayList<>();
    for (RunOut roller : scenario.line().rollers()) {
      if (roller.amplitudePercent() > 0) {
        double degrees = roller.phaseDegrees();
        double phase = degrees < 0 ? 2 * Math.PI * random.nextDouble() : Math.toRadians(degrees);
        double slipped = wavelengthMm(roller) * (1 + PERCENT * roller.slipPercent());
        ripples.add(new double[] {PERCENT * roller.amplitudePercent(), slipped, phase});
        truth.roller(roller, phase);
      }
    }
    return ripples;
  }

  private double[] wander(int count, Texture texture) {
    double[] wander = smooth(count, texture.wanderMm());
    for (int i = 0; i < count; i++) {
      wander[i] *= PERCENT * texture.wanderPercent();
    }
    return wander;
  }

  /** A random series of standard deviation 1 with that correlation length, mm. */
  private double[] smooth(int count, double correlationMm) {
    double keep = Math.exp(-1 / correlationMm);
    double fresh = Math.sqrt(1 - keep * keep);
    double[] series = new double[count];
    double value = random.nextGaussian();
    for (int i = 0; i < count; i++) {
      series[i] = value;
      value = keep * value + fresh * random.nextGaussian();
    }
    return series;
  }

  /** Roughness and seams pass under the plunger, and half of them under each foot. */
  private void roughen() {
    Texture texture = scenario.line().texture();
    double[] height = smooth(length + 1, texture.roughnessMm());
    for (int s = 0; s <= length; s++) {
      height[s] *= texture.roughnessUm() / 1000;
    }
    for (LineTruth.Builder piece : pieces) {
      for (Seam seam : texture.seams()) {
        raise(height, piece.from + seam.atMm(), seam);
      }
    }
    for (int s = half; s <= length - half; s++) {
      face[s] = height[s] - (height[s - half] + height[s + half]) / 2;
    }
  }

  private void raise(double[] height, double at, Seam seam) {
    int from = (int) Math.max(0, Math.ceil(at - seam.widthMm() / 2));
    for (int s = from; s <= length && s < at + seam.widthMm() / 2; s++) {
      height[s] += seam.heightMm();
    }
  }

  private double[] triangleMeans() {
    double[] sum = new double[length + 2];
    double[] second = new double[length + 3];
    for (int i = 0; i <= length; i++) {
      sum[i + 1] = sum[i] + curvature[i];
      second[i + 2] = second[i + 1] + sum[i + 1];
    }
    double[] means = new double[length + 1];
    for (int s = half; s <= length - half; s++) {
      means[s] =
          (second[s + half + 1] - 2 * second[s + 1] + second[s - half + 1]) / half / (double) half;
    }
    for (int s = 0; s < half; s++) {
      means[s] = means[half];
      means[length - s] = means[length - half];
    }
    return means;
  }

  /**
   * How far the plunger is pushed in from free air at a place, mm: nothing beyond the ends, tilting
   * until both feet stand, then by the chord of the curvature that is shown, of which the pass has
   * bent a share.
   */
  double pushedInMm(double placeMm, double share, LineErrors errors) {
    if (placeMm < 0 || placeMm > length) {
      return 0;
    }
    int sign = scenario.job().measuredFace() == Face.INNER ? -1 : 1;
    double bend = at(shown, placeMm) * share * (1 + errors.curvatureShare());
    double chord =
        Chord.depthMm(sign * bend, scenario.bridge().spanMm(), scenario.bridge().footRadiusMm());
    double depth = chord + errors.depthMm() + at(face, placeMm);
    double standing = Math.min(1, Math.min(placeMm, length - placeMm) / half);
    return (depth + scenario.indicator().protrusionMm()) * Math.sqrt(standing);
  }

  private static double at(double[] values, double placeMm) {
    int below = (int) Math.min(placeMm, values.length - 2);
    return values[below] + (placeMm - below) * (values[below + 1] - values[below]);
  }

  int lengthMm() {
    return length;
  }

  List<LineTruth.Builder> pieces() {
    return pieces;
  }
}
