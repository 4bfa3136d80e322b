package org.chordlog.cli.statistics;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.Spread;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.drift.MachineStatistics;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Statistics of a column of numbers. */
@Command(
    name = "analyse",
    mixinStandardHelpOptions = true,
    description = {
      "Tells whether values in a CSV file are in control and capable, by which rules and how sure.",
      "Exit code 1 if it is not in control, or a value lies beyond a specification limit.",
      "A steady process of any length is called not in control in at most 5 %% of cases.",
      "Exported readings tell in their column phase where a correction, lot or set-up was.",
      "The range across it is left out then, so Cp and Cpk are those of the job's page and report.",
      "Other files know no such events, unless --phase-column names them."
    })
public final class Analyse implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "CSV with comma, semicolon or tab.")
  private Path file;

  @Option(
      names = "--column",
      paramLabel = "COLUMN",
      description = "Name or number from 1; not needed if there is one.")
  private @Nullable String column;

  @Option(
      names = {"--lsl", "--lower"},
      paramLabel = "L",
      description = "Lower specification limit.")
  private @Nullable String lower;

  @Option(
      names = {"--usl", "--upper"},
      paramLabel = "L",
      description = "Upper specification limit.")
  private @Nullable String upper;

  @Option(names = "--target", paramLabel = "L", description = "Target value.")
  private @Nullable String target;

  @Option(
      names = "--subgroup",
      paramLabel = "N",
      defaultValue = "1",
      description = "Readings in a subgroup, 1 to 25 (${DEFAULT-VALUE}).")
  private int subgroup;

  @Mixin private AnalyseColumns places = new AnalyseColumns();
  @Mixin private ColumnUnit unit = new ColumnUnit();
  @Mixin private CsvOptions csv = new CsvOptions();

  @Option(
      names = "--uncertainty",
      paramLabel = "L",
      defaultValue = "0",
      description = "Standard uncertainty of a reading that changes from reading to reading.")
  private String uncertainty;

  @Option(
      names = "--tests",
      paramLabel = "N",
      split = ",",
      description = "Run tests of Nelson that are on, for example 1,2,5,6; all by default.")
  private @Nullable List<Integer> tests;

  @Option(
      names = "--baseline",
      paramLabel = "N",
      defaultValue = "0",
      description = "Freeze limits after so many points; 0: limits from all (${DEFAULT-VALUE}).")
  private int baseline;

  @Option(
      names = "--spread",
      paramLabel = "KIND",
      description = "Spread of subgroups by: range or standard_deviation (range).")
  private Spread spread = Spread.RANGE;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    CsvColumns read = CsvColumns.withoutSummaries("FILE", file, csv);
    Set<Integer> again = csv.allRows() ? Set.of() : places.again(read);
    CsvColumns columns = read.without(again);
    int at = columns.find("--column", column);
    Lengths lengths = places.standardised() ? null : unit.of(columns.name(at));
    StatisticsPlan plan = plan(lengths == null ? "" : lengths.symbol());
    Analysis analysis = analyse(columns, at, plan, again.stream().map(read::line).toList());
    String text = json ? analysis.json() : analysis.text(lengths);
    spec.commandLine().getOut().println(text);
    return analysis.fault() ? ExitCode.FAULT : ExitCode.WELL;
  }

  private StatisticsPlan plan(String unitSymbol) {
    ChartSettings charts =
        ChartSettings.usual().withBaselinePoints(baseline).withSpread(spread).withRunRules(rules());
    return new StatisticsPlan(
        places.quantity(column == null ? "value" : column),
        unitSymbol,
        new Limits(
            TypedNumber.given("--lsl", lower),
            TypedNumber.given("--usl", upper),
            TypedNumber.given("--target", target)),
        List.of(),
        rule(),
        charts);
  }

  private RunRules rules() {
    if (tests == null) {
      return places.pools() ? ShortRun.RULES : RunRules.nelson();
    }
    for (int test : tests) {
      if (test < 1 || test > 8) {
        throw new BadInput("--tests", test, "is not a run test", "1 to 8");
      }
    }
    return RunRules.only(tests.stream().map(RunTest::numbered).toArray(RunTest[]::new));
  }

  private SubgroupRule rule() {
    if (places.byPiece() && subgroup == 1) {
      return new SubgroupRule(SubgroupRule.Kind.PIECE, 25);
    }
    if (subgroup < 1 || subgroup > 25) {
      throw new BadInput("--subgroup", subgroup, "is out of range", "1 to 25");
    }
    return subgroup == 1
        ? new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)
        : new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, subgroup);
  }

  private Analysis analyse(CsvColumns columns, int at, StatisticsPlan plan, List<Long> again) {
    CsvRows rows = new CsvRows(columns, at, places);
    rows.refuseWithoutNumbers(columns.name(at));
    Double each = TypedNumber.given("--uncertainty", uncertainty);
    JobStatistics job = statistics(rows, asMeasured(plan, rows), each);
    double base = base(job);
    MachineStatistics trend = trend(rows, base);
    return Analysis.of(
        columns.name(at),
        job,
        places.pools() ? null : (Double) base,
        trend.verdict(tolerance(base)),
        places.byLot() ? lots(rows, job, each) : List.of(),
        rows,
        again);
  }

  /** By piece, one is complete that has as many readings as any, also where none follows it. */
  private StatisticsPlan asMeasured(StatisticsPlan plan, CsvRows rows) {
    StatisticsPlan placed = plan.withPositions(rows.positions());
    int most = rows.mostInAPieceExported();
    boolean byPiece = plan.subgroups().kind() == SubgroupRule.Kind.PIECE;
    return byPiece && most >= 2 && most < plan.subgroups().size()
        ? placed.withSubgroups(new SubgroupRule(SubgroupRule.Kind.PIECE, most))
        : placed;
  }

  private static MachineStatistics trend(CsvRows rows, double base) {
    MachineStatistics trend = new MachineStatistics();
    rows.forEach(
        row -> {
          if (row.begins() != CsvRows.Begin.NONE) {
            trend.happened(row.beginning());
          }
          if (row.counts()) {
            trend.add(row.job(), row.piece(), row.number(), row.relative(base));
          }
        });
    trend.endPiece();
    return trend;
  }

  /** The first characteristic, lot by lot. */
  private static List<Analysis.Lot> lots(CsvRows rows, JobStatistics all, @Nullable Double each) {
    return rows.lots().stream()
        .map(
            lot -> {
              JobStatistics own = ofLot(rows, lot, all.plan(), each);
              return new Analysis.Lot(lot, own.summary(all.characteristics().get(0), Scope.JOB));
            })
        .toList();
  }

  /** A phase may have begun with a reading of another lot. */
  private static JobStatistics ofLot(
      CsvRows rows, String lot, StatisticsPlan plan, @Nullable Double each) {
    JobStatistics own = new JobStatistics(plan);
    AtomicInteger phaseRun = new AtomicInteger(-1);
    rows.forEach(
        row -> {
          if (row.lot().equals(lot)) {
            int before = phaseRun.getAndSet(row.phaseRun());
            if (before >= 0 && before != row.phaseRun()) {
              own.startPhase();
            }
            add(own, row, each);
          }
        });
    return own;
  }

  /**
   * Limits from all points are known only at the end: then every point is judged by them. With
   * several phases each has limits of its own, as on the page of a job.
   */
  private JobStatistics statistics(CsvRows rows, StatisticsPlan plan, @Nullable Double each) {
    JobStatistics first = new JobStatistics(plan);
    rows.forEach(row -> take(first, row, each));
    if (baseline > 0 || rows.severalPhases()) {
      return first;
    }
    JobStatistics judged = JobStatistics.judgedBy(first);
    rows.forEach(row -> take(judged, row, each));
    return judged;
  }

  private static void take(JobStatistics to, CsvRows.Row row, @Nullable Double uncertainty) {
    if (row.begins() != CsvRows.Begin.NONE) {
      to.startPhase();
    }
    add(to, row, uncertainty);
  }

  private static void add(JobStatistics to, CsvRows.Row row, @Nullable Double uncertainty) {
    if (!row.counts()) {
      boolean unused = to.exclude(row.number(), "excluded");
    }
    to.add(row.observation(uncertainty == null ? 0 : uncertainty));
  }

  /** What the trend is relative to: the target, else the mean; 0 with nominals of their own. */
  private double base(JobStatistics job) {
    if (places.pools()) {
      return 0;
    }
    Double wanted = TypedNumber.given("--target", target);
    return wanted == null || wanted == 0 ? mean(job) : wanted;
  }

  private static double mean(JobStatistics job) {
    return job.summary(job.characteristics().get(0), Scope.JOB)
        .figure("mean")
        .map(Figure::value)
        .orElse(0.0);
  }

  /** Half the specified width, relative. */
  private @Nullable Double tolerance(double base) {
    Double low = TypedNumber.given("--lsl", lower);
    Double high = TypedNumber.given("--usl", upper);
    return low == null || high == null || base == 0 ? null : (high - low) / 2 / Math.abs(base);
  }
}
