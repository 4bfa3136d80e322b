package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.StudyResult.Size;
import org.jspecify.annotations.Nullable;

/**
 * Bias on several masters as a straight line over their values (automotive reference manual on
 * measurement systems, 4th ed., chapter III, from memory; ISO 11095). Of depths, the intercept is
 * the error of the zero and the slope 2·δ/span, δ the error of the span.
 */
public final class LinearityStudy {
  private final StraightLine line;
  private final Map<Double, List<Double>> biases = new TreeMap<>();
  private final StudySettings settings;
  private final double confidence;

  private LinearityStudy(double[] references, double[] values, StudySettings settings) {
    if (references.length != values.length) {
      throw new BadInput("reference", references.length, "are not as many as values", "one each");
    }
    double[] bias = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      bias[i] = values[i] - references[i];
      biases.computeIfAbsent(references[i], key -> new ArrayList<>()).add(bias[i]);
    }
    line = StraightLine.of(references, bias);
    this.settings = settings;
    confidence = settings.evaluation().confidence();
  }

  /** Values and references in the study's unit, one reference to each value. */
  public static LinearityStudy of(double[] references, double[] values, StudySettings settings) {
    return new LinearityStudy(references, values, settings);
  }

  /** The fitted bias at one place with its band, in the study's unit. */
  public record BandPoint(double reference, double bias, double lower, double upper) {}

  /** Bias and band at {@code count} places over the masters' range, for a picture. */
  public List<BandPoint> band(int count) {
    double step = (most() - least()) / (count - 1);
    List<BandPoint> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double x = least() + i * step;
      Interval at = line.at(x, confidence);
      points.add(new BandPoint(x, at.value(), at.lower(), at.upper()));
    }
    return points;
  }

  /** The largest mean bias on one of the masters, without its sign, in the study's unit. */
  public double largestBias() {
    return biases.values().stream()
        .mapToDouble(own -> Math.abs(Means.mean(own.stream().mapToDouble(each -> each).toArray())))
        .max()
        .orElseThrow();
  }

  /** {@code spanMm} where references and values are depths in mm on a bridge of that span. */
  public StudyResult result(@Nullable Double spanMm) {
    LinearityFigures figures = new LinearityFigures(line, spanMm == null ? "" : "depth ", settings);
    Findings findings = new Findings(StudyKind.LINEARITY, size()).figures(figures.line());
    if (spanMm != null) {
      findings.figures(figures.ofDepths(spanMm));
    }
    Double process = settings.processSigma();
    if (process != null) {
      findings.figure(figures.index(process));
    }
    biases.forEach((at, own) -> findings.figure(figures.biasAt(at, own)));
    judgedPlaces().forEach(at -> findings.figure(figures.bandAt(at)));
    findings.test(LineTests.slope(line)).test(LineTests.intercept(line));
    LineTests.lackOfFit(line, biases.values()).ifPresent(test -> fits(findings, test));
    return findings.result();
  }

  /** The masters, and where between them the band comes nearest to leaving 0 out. */
  private List<Double> judgedPlaces() {
    List<Double> places = new ArrayList<>(biases.keySet());
    double vertex = line.vertex(confidence);
    Interval there = line.at(vertex, confidence);
    if (vertex > least() && vertex < most() && there.lower() * there.upper() > 0) {
      places.add(vertex);
    }
    return places;
  }

  private Size size() {
    String words = biases.size() + " masters, " + line.points() + " readings";
    return new Size(biases.size(), 1, line.points() / biases.size(), words);
  }

  private static void fits(Findings findings, StudyTest test) {
    findings.test(test);
    if (test.found()) {
      findings.caution(
          "The biases do not follow a straight line, so slope and intercept tell only a part;"
              + " look at the bias of each master.");
    }
  }

  private double least() {
    return biases.keySet().stream().mapToDouble(at -> at).min().orElseThrow();
  }

  private double most() {
    return biases.keySet().stream().mapToDouble(at -> at).max().orElseThrow();
  }
}
