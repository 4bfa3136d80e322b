package org.chordlog.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.BiasStudy.Reference;
import org.chordlog.study.FigureMaker.About;
import org.chordlog.study.StudyResult.Size;
import org.jspecify.annotations.Nullable;

/**
 * One master over days and runs of days: standard deviations at three levels, within a day, between
 * days and between runs (NIST/SEMATECH e-Handbook, 2.3.3 and 2.6.1), and what each level adds to
 * the one below.
 */
public final class StabilityStudy {
  private static final NestedAnova.Names NAMES = new NestedAnova.Names("run", "day");
  private static final String HANDBOOK = "NIST/SEMATECH e-Handbook, 2.3.3";

  /** What one reading scatters by, whatever the day. */
  static final String ONE = "oneReading";

  private final NestedAnova anova;
  private final double[][] averages;
  private final @Nullable Reference master;
  private final StudySettings settings;
  private final FigureMaker make;
  private final Mls mls;

  private StabilityStudy(
      NestedAnova anova, double[][] averages, @Nullable Reference master, StudySettings settings) {
    this.anova = anova;
    this.averages = averages;
    this.master = master;
    this.settings = settings;
    make = new FigureMaker(settings);
    mls = new Mls(settings.evaluation().confidence());
  }

  /**
   * Runs by {@code operator}, empty for one run, days by {@code part}. With the master's value, how
   * far the mean of all days is beside it is told, and not judged.
   */
  public static StudyResult of(
      List<StudyReading> readings, @Nullable Reference master, StudySettings settings) {
    NestedTable table = NestedTable.of(readings);
    if (table.members() < 2) {
      throw new BadInput("day", 1, "is too few to see days differ", "2 or more days in each run");
    }
    NestedAnova anova = NestedAnova.of(table.values(), NAMES);
    return new StabilityStudy(anova, CrossedAnova.cellMeans(table.values()), master, settings)
        .result();
  }

  /** From each day's average and standard deviation of {@code repeats} readings, by run and day. */
  public static StudyResult ofAverages(
      double[][] averages, double[][] deviations, int repeats, StudySettings settings) {
    NestedAnova.Size size = new NestedAnova.Size(averages.length, averages[0].length, repeats);
    double within =
        Arrays.stream(deviations).flatMapToDouble(Arrays::stream).map(s -> s * s).sum()
            * (repeats - 1);
    double[] runs = Arrays.stream(averages).mapToDouble(Means::mean).toArray();
    double between = runs.length == 1 ? 0 : (double) size.members() * repeats * Means.squares(runs);
    double days = repeats * Arrays.stream(averages).mapToDouble(Means::squares).sum();
    NestedAnova anova = NestedAnova.of(size, NAMES, between, days, within);
    return new StabilityStudy(anova, averages, null, settings).result();
  }

  private StudyResult result() {
    NestedAnova.Size size = anova.size();
    Findings findings = new Findings(StudyKind.STABILITY, size(size)).anova(anova.rows());
    MeanSquare repeat = anova.repeat();
    MeanSquare run = anova.group();
    if (repeat != null) {
      findings.figure(level("level1", "within a day", repeat, 1));
    }
    findings.figure(level("level2", "between averages of days", anova.member(), size.repeats()));
    if (run != null) {
      double readings = (double) size.repeats() * size.members();
      findings.figure(level("level3", "between averages of runs", run, readings));
    }
    added(findings, repeat, run);
    findings.figure(oneReading());
    if (master != null) {
      beside(findings, master);
    }
    drift(findings);
    return findings.result();
  }

  /** Standard deviation of averages of so many readings. */
  private StudyFigure level(String name, String words, MeanSquare square, double readings) {
    String method = "standard deviation; interval by chi-square";
    Combination combination = Combination.NONE.plus(1 / readings, square);
    return make.deviation(new About(name, words, method, HANDBOOK), mls.of(combination));
  }

  private void added(Findings findings, @Nullable MeanSquare repeat, @Nullable MeanSquare run) {
    NestedAnova.Size size = anova.size();
    if (repeat != null) {
      Combination days = Combination.difference(anova.member(), repeat, size.repeats());
      findings.figure(component("days", "what days add", days));
    }
    if (run != null) {
      double readings = (double) size.repeats() * size.members();
      Combination runs = Combination.difference(run, anova.member(), readings);
      findings.figure(component("runs", "what runs add", runs));
    }
  }

  private StudyFigure component(String name, String words, Combination combination) {
    Interval interval = mls.of(combination);
    Interval told = new Interval(Math.max(0, interval.value()), interval.lower(), interval.upper());
    String method =
        "standard deviation from a difference of mean squares, by modified large samples";
    return make.deviation(new About(name, words, method, "Burdick and Larsen 1997"), told);
  }

  private StudyFigure oneReading() {
    VarianceComponents components = anova.components(Source.OPERATOR);
    Interval drawn = new Shares(components, settings).ofTotal();
    Interval total =
        Mls.notBelow(
            drawn,
            components.components().stream().map(part -> mls.of(part.combination())).toList());
    About about =
        new About(
            ONE,
            "one reading on any day",
            "standard deviation, all levels together; generalised interval from 10,000 draws",
            "Weerahandi 1993");
    return make.deviation(about, total);
  }

  /** Days count as one reading each, as what a day adds does not average out within it. */
  private void beside(Findings findings, Reference of) {
    double[] days = Arrays.stream(averages).flatMapToDouble(Arrays::stream).toArray();
    if (Arrays.stream(days).distinct().count() == 1) {
      return;
    }
    Interval bias =
        BiasStudy.withMaster(Replicates.of(days), of, settings.evaluation().confidence());
    About about =
        new About(
            "bias",
            "mean of all days beside the master",
            "u² = s²/days + u_CAL²; interval by Student's t",
            "JCGM 100:2008, G.4.1");
    findings.figure(make.difference(about, bias));
    if (bias.lower() > 0 || bias.upper() < 0) {
      findings.caution(
          "The mean of all days is beside the master by more than its interval. That is not judged"
              + " here, only whether the gauge stays the same: calibrate it, or study its bias.");
    }
  }

  private void drift(Findings findings) {
    About about =
        new About(
            "drift",
            "change from day to day within runs",
            "least squares over the numbers of days; Student's t",
            "ISO 11095");
    Drift.of(averages, settings.evaluation().confidence())
        .ifPresent(
            slope ->
                findings.figure(
                    make.difference(about, slope).with(BiasStudy.judge(slope, settings))));
  }

  private static Size size(NestedAnova.Size of) {
    return new Size(of.groups() * of.members(), of.groups(), of.repeats(), design(of));
  }

  private static String design(NestedAnova.Size size) {
    List<String> words = new ArrayList<>();
    if (size.groups() > 1) {
      words.add(size.groups() + " runs");
    }
    words.add(size.members() + " days");
    words.add(size.repeats() + " readings a day");
    return String.join(" × ", words);
  }
}
