package org.chordlog.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.StudySettings.Constants;
import org.chordlog.study.VarianceComponents.Component;

/**
 * Every operator measures every part, by averages and ranges (automotive reference manual on
 * measurement systems, 4th ed., chapter III, from memory): EV = R̿·K1, AV² = (X̄diff·K2)² −
 * EV²/(parts·repeats), PV = Rp·K3. Intervals take each squared range over d2* as χ²/ν. One operator
 * is allowed; AV is then absent.
 */
public final class RangeStudy {
  private final CrossedTable table;
  private final StudySettings settings;
  private final double[][] ranges;

  private RangeStudy(CrossedTable table, StudySettings settings) {
    this.table = table;
    this.settings = settings;
    if (table.repeats() < 2) {
      throw new BadInput("repeat", 1, "has no range", "2 or more repeats");
    }
    ranges =
        Arrays.stream(table.values())
            .map(row -> Arrays.stream(row).mapToDouble(Means::range).toArray())
            .toArray(double[][]::new);
  }

  public static StudyResult of(List<StudyReading> readings, StudySettings settings) {
    return new RangeStudy(CrossedTable.of(readings), settings).result();
  }

  private StudyResult result() {
    VarianceComponents components = components();
    Findings findings = new Findings(StudyKind.RANGE, table.size());
    findings.figures(new GaugeFigures(components, table.cells().mean(), settings).figures());
    means(findings);
    findings.caution("The range method does not see an interaction of operator and piece.");
    rangesAbove().forEach(findings::caution);
    findings.order(table.cells().readings());
    Cautions.of(findings, components, settings);
    if (operators() > 1) {
      Cautions.fewOperators(findings, operators());
    }
    return findings.result();
  }

  private int parts() {
    return table.parts().size();
  }

  private int operators() {
    return table.operators().size();
  }

  private double meanRange() {
    return Means.mean(Arrays.stream(ranges).flatMapToDouble(Arrays::stream).toArray());
  }

  private VarianceComponents components() {
    List<Component> all = new ArrayList<>();
    MeanSquare repeat =
        new RangeSigma(meanRange(), parts() * operators(), table.repeats()).meanSquare("ranges");
    all.add(new Component(Source.REPEATABILITY, Combination.of(repeat), square(repeatability())));
    if (operators() > 1) {
      all.add(operatorPart(repeat));
    }
    MeanSquare part = new RangeSigma(Means.range(partMeans()), 1, parts()).meanSquare("parts");
    Combination parts = Combination.of(part).plus(-1.0 / (operators() * table.repeats()), repeat);
    all.add(new Component(Source.PIECE, parts, part.value()));
    return new VarianceComponents(all);
  }

  /** As published with d2, or with d2*. */
  private double repeatability() {
    RangeSigma sigma = new RangeSigma(meanRange(), parts() * operators(), table.repeats());
    return settings.evaluation().constants() == Constants.EXACT
        ? sigma.sigma()
        : meanRange() / Factors.of(table.repeats()).d2();
  }

  private Component operatorPart(MeanSquare repeat) {
    MeanSquare means =
        new RangeSigma(Means.range(operatorMeans()), 1, operators()).meanSquare("operators");
    double readings = (double) parts() * table.repeats();
    Combination combination = Combination.of(means).plus(-1 / readings, repeat);
    double published = means.value() - square(repeatability()) / readings;
    return new Component(Source.OPERATOR, combination, Math.max(0, published));
  }

  private double[] partMeans() {
    return Arrays.stream(CrossedAnova.cellMeans(table.values())).mapToDouble(Means::mean).toArray();
  }

  private double[] operatorMeans() {
    double[][] cells = CrossedAnova.cellMeans(table.values());
    return IntStream.range(0, operators())
        .mapToDouble(j -> Means.mean(Arrays.stream(cells).mapToDouble(row -> row[j]).toArray()))
        .toArray();
  }

  /** What the form lists: mean of each operator and mean range. */
  private void means(Findings findings) {
    FigureMaker make = new FigureMaker(settings);
    RangeSigma sigma = new RangeSigma(meanRange(), parts() * operators(), table.repeats());
    Interval variance =
        new Mls(settings.evaluation().confidence()).of(Combination.of(sigma.meanSquare("ranges")));
    double scale = settings.telling().deviation(1) * sigma.d2Star();
    Interval range = FigureMaker.roots(variance, scale);
    FigureMaker.About about =
        new FigureMaker.About(
            "meanRange",
            "mean range of the repeats",
            "mean of all ranges; interval by Patnaik's degrees of freedom",
            GaugeFigures.MANUAL);
    findings.figure(make.figure(about, range, settings.telling().unit()));
  }

  /** An operator with a range above D4·R̿ is named. */
  private List<String> rangesAbove() {
    double limit = Factors.of(table.repeats()).d4Limit() * meanRange();
    List<String> sentences = new ArrayList<>();
    for (int i = 0; i < parts(); i++) {
      for (int j = 0; j < operators(); j++) {
        if (ranges[i][j] > limit) {
          sentences.add(
              "Range of operator "
                  + table.operators().get(j)
                  + " on piece "
                  + table.parts().get(i)
                  + " is above its control limit D4·R̿: find the reason, or measure it again.");
        }
      }
    }
    return sentences;
  }

  private static double square(double x) {
    return x * x;
  }
}
