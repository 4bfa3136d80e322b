package org.chordlog.study;

import java.util.List;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.FigureMaker.About;
import org.chordlog.study.StudyResult.Size;

/**
 * What placing the bridge by eye adds: repeats with the bridge put down again at a place found by
 * eye, against repeats on marks. σ²placing = σ²(by eye) − σ²(marked).
 */
public final class PlacingStudy {
  /** Repeatability with the place found by eye, as the shop measures. */
  static final String BY_EYE = "byEye";

  private PlacingStudy() {}

  /** Each list is a study of one operator on parts, in the study's unit. */
  public static StudyResult of(
      List<StudyReading> byEye, List<StudyReading> marked, StudySettings settings) {
    MeanSquare free = repeat(byEye, "repeat by eye");
    MeanSquare fixed = repeat(marked, "repeat on marks");
    Mls mls = new Mls(settings.evaluation().confidence());
    FigureMaker make = new FigureMaker(settings);
    Interval difference = mls.of(Combination.difference(free, fixed, 1));
    Interval placing =
        new Interval(Math.max(0, difference.value()), difference.lower(), difference.upper());
    Findings findings = new Findings(StudyKind.PLACING, size(byEye, marked));
    findings
        .anova(List.of(AnovaRow.tested(free, fixed), AnovaRow.untested(fixed)))
        .figure(make.deviation(about(BY_EYE, "repeatability by eye"), mls.of(Combination.of(free))))
        .figure(
            make.deviation(
                about("marked", "repeatability on marks"), mls.of(Combination.of(fixed))))
        .figure(make.deviation(about("placing", "what placing by eye adds"), placing));
    Double room = settings.tolerance().room(new Cells(byEye).mean());
    if (room != null) {
      double share = 100 * settings.evaluation().sigmas() / room;
      Interval told = FigureMaker.roots(mls.of(Combination.of(free)), share);
      findings.figure(
          make.figure(about("percentToleranceByEye", "by eye, share of the tolerance"), told, "%")
              .atMost(settings.criteria().gaugePercent(), " %"));
    }
    Cautions.coarse(findings, free, fixed);
    if (difference.value() < 0) {
      findings.caution("By eye the readings scatter less than on marks: placing is told as 0.");
    }
    findings.caution(
        "Placing adds little on a true arc and much on its straight ends; say where it was done.");
    return findings.result();
  }

  private static Size size(List<StudyReading> byEye, List<StudyReading> marked) {
    Cells cells = new Cells(byEye);
    String words = byEye.size() + " readings by eye, " + marked.size() + " on marks";
    return new Size(cells.names(StudyReading::part).size(), 1, cells.repeats(), words);
  }

  private static MeanSquare repeat(List<StudyReading> readings, String source) {
    Combination repeat =
        OneOperatorStudy.components(readings)
            .where(Source.REPEATABILITY::equals)
            .get(0)
            .combination();
    MeanSquare square = repeat.terms().get(0).square();
    return new MeanSquare(source, square.value(), square.degreesOfFreedom());
  }

  private static About about(String name, String words) {
    String method =
        "standard deviation; interval by chi-square, of a difference by modified large"
            + " samples";
    return new About(name, words, method, "Burdick and Larsen 1997");
  }
}
