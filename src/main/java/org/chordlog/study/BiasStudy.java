package org.chordlog.study;

import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.measure.Check;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.FigureMaker.About;
import org.chordlog.study.StudyFigure.Judged;

/**
 * Readings on one master against its value: bias with Student's t interval (automotive reference
 * manual on measurement systems, 4th ed., independent sample method, from memory; GUM 4.2).
 */
public final class BiasStudy {
  private static final int FEW = 10;

  private BiasStudy() {}

  /** A master's value in the study's unit, with its expanded uncertainty (k = 2), 0 if unknown. */
  public record Reference(double value, double expandedUncertainty) {
    public Reference {
      Check.finite("reference", value);
      Check.notNegative("expanded uncertainty", expandedUncertainty);
    }

    double standardUncertainty() {
      return expandedUncertainty / 2;
    }
  }

  public static StudyResult of(double[] values, Reference reference, StudySettings settings) {
    Replicates sample = Replicates.of(values);
    double confidence = settings.evaluation().confidence();
    FigureMaker make = new FigureMaker(settings);
    Interval bias = sample.difference(reference.value(), confidence);
    Findings findings = new Findings(StudyKind.BIAS, sample.size());
    findings
        .figure(make.value(about("mean", "mean"), sample.difference(0, confidence)))
        .figure(make.deviation(aboutDeviation(), sample.variance(confidence)));
    boolean known = reference.expandedUncertainty() > 0;
    StudyFigure seen = make.difference(about("bias", "bias on the master"), bias);
    Interval whole = withMaster(sample, reference, confidence);
    Judged judged = judge(known ? whole : bias, settings);
    findings.figure(known ? seen : seen.with(judged));
    if (known) {
      findings.figure(make.difference(aboutWhole(), whole).with(judged));
    }
    findings.test(sample.test(reference.value()));
    cautions(findings, values.length, known);
    return findings.result();
  }

  /** u(b)² = s²/n + u_CAL², degrees of freedom by Welch-Satterthwaite. */
  static Interval withMaster(Replicates sample, Reference reference, double confidence) {
    double own = sample.deviationOfMean() * sample.deviationOfMean();
    double master = reference.standardUncertainty() * reference.standardUncertainty();
    double degrees = sample.degreesOfFreedom() * Math.pow((own + master) / own, 2);
    double t = TDistribution.of(degrees).inverseSurvivalProbability((1 - confidence) / 2);
    double half = t * Math.sqrt(own + master);
    double bias = sample.mean() - reference.value();
    return new Interval(bias, bias - half, bias + half);
  }

  /** Against the permitted bias; without one, whether 0 is inside the interval. */
  static Judged judge(Interval bias, StudySettings settings) {
    Double permitted = settings.criteria().permittedBias();
    if (permitted == null) {
      boolean zero = bias.lower() <= 0 && bias.upper() >= 0;
      return new Judged(
          zero ? StudyVerdict.PASSES : StudyVerdict.FAILS, Sentence.plain("0 inside the interval"));
    }
    double most = Math.max(Math.abs(bias.lower()), Math.abs(bias.upper()));
    boolean around = bias.lower() <= 0 && bias.upper() >= 0;
    double least = around ? 0 : Math.min(Math.abs(bias.lower()), Math.abs(bias.upper()));
    Sentence criterion =
        Sentence.of(
            "at most ± %s",
            Numbers.told(settings.telling().deviation(permitted), settings.telling().unit()));
    return new Judged(StudyVerdict.atMost(least, most, permitted), criterion);
  }

  static About about(String name, String words) {
    return about(name, Sentence.plain(words));
  }

  static About about(String name, Sentence words) {
    return new About(name, words, "mean; interval by Student's t", GaugeFigures.MANUAL);
  }

  private static About aboutDeviation() {
    return new About(
        "standardDeviation", "repeatability on the master", "interval by chi-square", "GUM 4.2.2");
  }

  private static About aboutWhole() {
    return new About(
        "biasWithMaster",
        "bias with the master's own uncertainty",
        "u² = s²/n + u_CAL²; interval by Student's t with Welch-Satterthwaite's degrees of freedom",
        "JCGM 100:2008, G.4.1");
  }

  private static void cautions(Findings findings, int count, boolean known) {
    if (count < FEW) {
      findings.caution("Fewer than 10 readings: a bias can hide in their scatter.");
    }
    if (!known) {
      findings.caution(
          "The master's own uncertainty is not in the interval; give it to have it added.");
    }
  }
}
