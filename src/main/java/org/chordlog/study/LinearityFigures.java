package org.chordlog.study;

import java.util.List;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.NoncentralT;
import org.chordlog.study.FigureMaker.About;

/** Figures of a line of biases over references. */
final class LinearityFigures {
  private final StraightLine line;
  private final String ofReference;
  private final StudySettings settings;
  private final double confidence;
  private final FigureMaker make;

  /** {@code ofReference} is said before a reference: what it is, or nothing. */
  LinearityFigures(StraightLine line, String ofReference, StudySettings settings) {
    this.line = line;
    this.ofReference = ofReference;
    this.settings = settings;
    confidence = settings.evaluation().confidence();
    make = new FigureMaker(settings);
  }

  List<StudyFigure> line() {
    return List.of(
        make.figure(about("slope", "change of bias over reference"), line.slope(confidence), ""),
        make.difference(about("intercept", "bias at reference 0"), line.at(0, confidence)),
        scatter(),
        determination());
  }

  /** Slope 2·δ/span, δ the error of the span; intercept the error of the zero. */
  List<StudyFigure> ofDepths(double spanMm) {
    Interval span = times(line.slope(confidence), spanMm / 2);
    Interval zero = line.at(0, confidence);
    String unit = settings.telling().unit();
    return List.of(
        make.figure(about("spanError", "error of the span, slope·span/2"), span, unit),
        make.figure(about("zeroError", "error of the zero, intercept"), zero, unit));
  }

  private StudyFigure scatter() {
    double s = line.residualDeviation();
    MeanSquare residual = new MeanSquare("residual", s * s, line.degreesOfFreedom());
    Interval variance = new Mls(confidence).of(Combination.of(residual));
    return make.deviation(about("residualDeviation", "scatter about the line"), variance);
  }

  /**
   * R² = t²/(t² + ν) of the slope's t; its interval from the noncentrality δ of t, with R² = δ²/(δ²
   * + n).
   */
  private StudyFigure determination() {
    double t = Math.abs(line.slope() / line.slopeDeviation());
    double value = t * t / (t * t + line.degreesOfFreedom());
    double tail = (1 - confidence) / 2;
    Interval share = new Interval(value, share(t, 1 - tail), share(t, tail));
    String words = "share of the scatter that the line explains";
    return make.figure(
        new About("R2", words, "t²/(t² + ν); interval by noncentral t", "ISO 11095"), share, "");
  }

  private double share(double t, double below) {
    double delta = Math.max(0, NoncentralT.noncentrality(t, line.degreesOfFreedom(), below));
    return delta * delta / (delta * delta + line.points());
  }

  /** |slope| times the process variation, as older editions of the manual have it. */
  StudyFigure index(double processSigma) {
    double width = settings.evaluation().sigmas() * settings.telling().deviation(processSigma);
    Interval slope = absolute(line.slope(confidence));
    About about = about("linearity", "|slope| × process variation");
    return make.figure(about, times(slope, width), settings.telling().unit());
  }

  StudyFigure biasAt(double reference, List<Double> biases) {
    String name = Decimals.significant(reference);
    About about = BiasStudy.about("biasAt " + name, at("mean bias", reference));
    double[] own = Means.array(biases);
    boolean scatters = own.length > 1 && Means.deviation(own) > 0;
    double mean = Means.mean(own);
    return make.difference(
        about,
        scatters
            ? Replicates.of(own).difference(0, confidence)
            : new Interval(mean, Double.NaN, Double.NaN));
  }

  /** The fitted bias at one place, judged. */
  StudyFigure bandAt(double reference) {
    String name = Decimals.significant(reference);
    Interval at = line.at(reference, confidence);
    return make.difference(about("bandAt " + name, at("fitted bias", reference)), at)
        .with(BiasStudy.judge(at, settings));
  }

  private Sentence at(String what, double reference) {
    FigureUnit telling = settings.telling();
    Object told = Numbers.told(telling.value(reference), telling.unit());
    return Sentence.of("%s at %s%s", what, ofReference, told);
  }

  private static Interval times(Interval of, double factor) {
    return new Interval(factor * of.value(), factor * of.lower(), factor * of.upper());
  }

  private static Interval absolute(Interval of) {
    double a = Math.abs(of.lower());
    double b = Math.abs(of.upper());
    boolean around = of.lower() < 0 && of.upper() > 0;
    return new Interval(Math.abs(of.value()), around ? 0 : Math.min(a, b), Math.max(a, b));
  }

  private static About about(String name, String words) {
    return about(name, Sentence.plain(words));
  }

  private static About about(String name, Sentence words) {
    String method = "least squares; interval by Student's t, of scatter by chi-square";
    return new About(name, words, method, "ISO 11095; " + GaugeFigures.MANUAL);
  }
}
