package org.chordlog.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.ChartSettings;
import org.chordlog.stats.Figure;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.Limits;
import org.chordlog.stats.MachineStatistics;
import org.chordlog.stats.Observation;
import org.chordlog.stats.RunRules;
import org.chordlog.stats.RunTest;
import org.chordlog.stats.Spread;
import org.chordlog.stats.StatisticsPlan;
import org.chordlog.stats.Summary;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Statistics of a column of numbers. */
@Command(
    name = "analyse",
    mixinStandardHelpOptions = true,
    description = {
      "Charts, run tests, capability and trend of a column of a CSV file.",
      "Exit code 1 if a point breaks a run test or lies beyond a specification limit."
    })
final class Analyse implements Callable<Integer> {
  private static final String POSITION = "all";
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "CSV with comma, semicolon or tab.")
  private Path file;

  @Option(names = "--column", description = "Name or number from 1; not needed if there is one.")
  private @Nullable String column;

  @Option(names = "--lsl", description = "Lower specification limit.")
  private @Nullable String lower;

  @Option(names = "--usl", description = "Upper specification limit.")
  private @Nullable String upper;

  @Option(names = "--target", description = "Target value.")
  private @Nullable String target;

  @Option(
      names = "--subgroup",
      defaultValue = "1",
      description = "Readings in a subgroup, 1 to 25 (${DEFAULT-VALUE}).")
  private int subgroup;

  @Option(
      names = "--subgroup-column",
      description = "A subgroup is what has the same text here in a row, up to 25 readings.")
  private @Nullable String subgroupColumn;

  @Option(
      names = "--uncertainty",
      defaultValue = "0",
      description = "Standard uncertainty of a reading that changes from reading to reading.")
  private String uncertainty;

  @Option(
      names = "--tests",
      split = ",",
      description = "Run tests of Nelson that are on, for example 1,2,5,6; all by default.")
  private @Nullable List<Integer> tests;

  @Option(
      names = "--baseline",
      defaultValue = "0",
      description = "Freeze limits after so many points; 0: limits from all (${DEFAULT-VALUE}).")
  private int baseline;

  @Option(names = "--spread", description = "${COMPLETION-CANDIDATES} (${DEFAULT-VALUE}).")
  private Spread spread = Spread.RANGE;

  @Option(names = "--json", description = "As JSON.")
  private boolean json;

  @Override
  public Integer call() {
    StatisticsPlan plan = plan();
    CsvColumns columns = CsvColumns.read(file);
    Analysis analysis = analyse(columns, plan);
    spec.commandLine().getOut().println(json ? analysis.json() : analysis.text());
    return analysis.fault() ? Chordlog.FAULT : Chordlog.WELL;
  }

  private StatisticsPlan plan() {
    ChartSettings charts =
        ChartSettings.usual().withBaselinePoints(baseline).withSpread(spread).withRunRules(rules());
    return new StatisticsPlan(
        column == null ? "value" : column,
        "",
        new Limits(given("--lsl", lower), given("--usl", upper), given("--target", target)),
        List.of(POSITION),
        rule(),
        charts);
  }

  private RunRules rules() {
    if (tests == null) {
      return RunRules.nelson();
    }
    for (int test : tests) {
      if (test < 1 || test > 8) {
        throw new BadInput("--tests", test, "is no run test", "1 to 8");
      }
    }
    return RunRules.only(tests.stream().map(RunTest::numbered).toArray(RunTest[]::new));
  }

  private SubgroupRule rule() {
    if (subgroupColumn != null) {
      return new SubgroupRule(SubgroupRule.Kind.PIECE, 25);
    }
    if (subgroup < 1 || subgroup > 25) {
      throw new BadInput("--subgroup", subgroup, "is out of range", "1 to 25");
    }
    return subgroup == 1
        ? new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)
        : new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, subgroup);
  }

  private static @Nullable Double given(String option, @Nullable String text) {
    if (text == null) {
      return null;
    }
    Double value = CsvColumns.number(text);
    if (value == null) {
      throw new BadInput(option, text, "is not a number", "a number, decimal point or comma");
    }
    return value;
  }

  private Analysis analyse(CsvColumns columns, StatisticsPlan plan) {
    int at = columns.find("--column", column);
    int group = subgroupColumn == null ? -1 : columns.find("--subgroup-column", subgroupColumn);
    Double each = given("--uncertainty", uncertainty);
    JobStatistics job = new JobStatistics(plan);
    List<Long> leftOut = new ArrayList<>();
    int piece = 1;
    for (int row = 0; row < columns.rows(); row++) {
      piece += group >= 0 && row > 0 && !same(columns, row, group) ? 1 : 0;
      Double value = CsvColumns.number(columns.cell(row, at));
      if (value == null) {
        leftOut.add(columns.line(row));
      } else {
        int own = group >= 0 ? piece : row + 1;
        job.add(new Observation(row + 1, own, POSITION, row, value, each == null ? 0 : each));
      }
    }
    return trended(columns, at, job, leftOut);
  }

  /** The trend of the column as it stands, relative to the target, else to the mean. */
  private Analysis trended(CsvColumns columns, int at, JobStatistics job, List<Long> leftOut) {
    Double wanted = given("--target", target);
    double base = wanted == null || wanted == 0 ? mean(job) : wanted;
    MachineStatistics trend = new MachineStatistics();
    for (int row = 0; row < columns.rows(); row++) {
      Double value = CsvColumns.number(columns.cell(row, at));
      if (value != null) {
        trend.add(0, row + 1, row, base == 0 ? value : value / base - 1);
      }
    }
    trend.endPiece();
    return new Analysis(columns.name(at), job, base, trend.verdict(tolerance(base)), leftOut);
  }

  private static double mean(JobStatistics job) {
    return job.summary(job.characteristics().get(0), Summary.Scope.JOB)
        .figure("mean")
        .map(Figure::value)
        .orElse(0.0);
  }

  /** Half the specified width, relative. */
  private @Nullable Double tolerance(double base) {
    Double low = given("--lsl", lower);
    Double high = given("--usl", upper);
    return low == null || high == null || base == 0 ? null : (high - low) / 2 / Math.abs(base);
  }

  private static boolean same(CsvColumns columns, int row, int group) {
    return columns.cell(row, group).equals(columns.cell(row - 1, group));
  }
}
