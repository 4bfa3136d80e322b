package org.chordlog.study;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.FigureMaker.About;
import org.chordlog.study.MeasuringProcess.Part;
import org.chordlog.study.StudyResult.Size;

/**
 * Capability of the measuring system and process (ISO 22514-7, from memory): Q = 100·4·u/T, C_MS =
 * 0.3·T/(6·u), C_MP = 0.3·T/(3·u), each C 4/3 where its Q is at the limit of 15 % or 30 %; the
 * least tolerance that the limit allows.
 */
public final class ProcessCapability {
  private static final String SOURCE = "ISO 22514-7";
  private final MeasuringProcess process;
  private final double toleranceWidth;
  private final StudySettings settings;
  private final FigureMaker make;
  private final Mls mls;

  private ProcessCapability(
      MeasuringProcess process, double toleranceWidth, StudySettings settings) {
    this.process = process;
    this.toleranceWidth = Check.positive("tolerance", toleranceWidth);
    this.settings = settings;
    make = new FigureMaker(settings);
    mls = new Mls(settings.evaluation().confidence());
    if (!(process.process().variance() > 0)) {
      String allowed = "at least one contribution above 0";
      throw new BadInput("contributions", "nothing", "adds up to an uncertainty", allowed);
    }
  }

  /** {@code toleranceWidth} in the study's unit. */
  public static StudyResult of(
      MeasuringProcess process, double toleranceWidth, StudySettings settings) {
    return new ProcessCapability(process, toleranceWidth, settings).result();
  }

  private StudyResult result() {
    Findings findings =
        new Findings(
            StudyKind.PROCESS, new Size(1, 1, 1, process.parts().size() + " contributions"));
    process.parts().forEach((of, part) -> findings.figure(contribution(of, part)));
    side(findings, "MS", process.system(), settings.criteria().systemPercent(), 6);
    side(findings, "MP", process.process(), settings.criteria().processPercent(), 3);
    findings.caution(
        "A radius from one depth over a chord is a simple measurement as the standard means it; one"
            + " fitted through many points is not.");
    return findings.result();
  }

  private StudyFigure contribution(Contribution of, Part part) {
    String method =
        "standard uncertainty; stated ones have no scatter, others by chi-square or"
            + " modified large samples";
    return make.deviation(new About("u_" + of, of.words(), method, SOURCE), variance(part));
  }

  private Interval variance(Part part) {
    Interval interval = mls.of(part.combination());
    return new Interval(part.variance(), interval.lower(), interval.upper());
  }

  /** {@code sigmas} is 6 for the system, 3 for the process. */
  private void side(Findings findings, String of, Part part, double limit, double sigmas) {
    String words = of.equals("MS") ? "the measuring system" : "the measuring process";
    Interval u = FigureMaker.roots(variance(part), 1);
    findings.figure(
        make.deviation(about("u_" + of, "standard uncertainty of " + words), variance(part)));
    findings.figure(
        make.figure(
                about("Q_" + of, "2·U of " + words + " over the tolerance"),
                times(u, 400 / toleranceWidth),
                "%")
            .atMost(limit, " %"));
    double room = 0.3 * toleranceWidth / sigmas;
    Interval c = new Interval(room / u.value(), room / u.upper(), room / u.lower());
    findings.figure(make.figure(about("C_" + of, "capability index of " + words), c, ""));
    double perUnit = settings.telling().deviation(1) * 400 / limit;
    findings.figure(
        make.figure(
            about("Tmin_" + of, "least tolerance for " + words),
            times(u, perUnit),
            settings.telling().unit()));
  }

  private static Interval times(Interval of, double factor) {
    return new Interval(factor * of.value(), factor * of.lower(), factor * of.upper());
  }

  private static About about(String name, String words) {
    String method = "sum of variances; interval by modified large samples";
    return new About(name, words, method, SOURCE);
  }
}
