package org.chordlog.cli.study;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.RowsAgain;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.measure.BadInput;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyKind;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyVerdict;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A study of the gauge from a file of readings. */
@Command(
    name = "study",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    subcommands = {StudyPlan.class, StudyOrder.class, StudyReportFile.class},
    description = {
      "Tells from a CSV file of readings whether a gauge is good enough, each figure"
          + " with its interval.",
      "Columns by kind:",
      "  crossed, range, nested, one-operator: part, operator, repeat, value",
      "  split: part, place, operator, repeat, value",
      "  bias, type1: value; linearity: reference, value",
      "  stability: day, value, and run where there are several",
      "  placing: placing (eye or marks), part, value",
      "  process: contribution (RE, CAL, BI, LIN, EVR, EVO, AV, IA, …), u, and degrees",
      "A column order says when each value was measured.",
      "Exit code 1 if the study fails; undecided is no failure."
    })
public final class Study implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "CSV, comma, semicolon or tab.")
  private @Nullable Path file;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = {
        "crossed, range, nested, split, one-operator, bias, linearity, stability, type1,"
            + " placing, process."
      })
  private @Nullable String kind;

  @Mixin private StudyInputs inputs = new StudyInputs();
  @Mixin private KindOptions options = new KindOptions();
  @Mixin private CsvOptions csv = new CsvOptions();

  @Option(
      names = "--budget",
      paramLabel = "U",
      description = "Standard uncertainty that the reading's own budget states, to compare with.")
  private @Nullable String budget;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    if (file == null) {
      throw new BadInput("FILE", "nothing", "was given", "a CSV file with readings");
    }
    if (kind == null) {
      throw new BadInput("--kind", "nothing", "was given", StudyKinds.all());
    }
    CsvColumns columns = CsvColumns.read("FILE", file, csv);
    StudyTable table = new StudyTable(columns);
    StudyResult result = new StudyRun(table, inputs, options).result(StudyKinds.parse(kind));
    BudgetComparison compared = compare(result);
    String out = json ? StudyJson.of(result, compared) : new StudyText(result, compared).toString();
    spec.commandLine().getOut().println(out);
    warn(RowsAgain.caution(columns, columns.has("order") || columns.has("time_utc")));
    boolean fails = result.conclusion().verdict() == StudyVerdict.FAILS;
    return fails ? ExitCode.FAULT : ExitCode.WELL;
  }

  private void warn(String caution) {
    if (!caution.isEmpty()) {
      spec.commandLine().getErr().println(caution);
      spec.commandLine().getErr().flush();
    }
  }

  /** With the measuring process's uncertainty, else the gauge's or what the study has of it. */
  private @Nullable BudgetComparison compare(StudyResult result) {
    Double stated = TypedNumber.given("--budget", budget);
    if (stated == null) {
      return null;
    }
    StudyFigure figure =
        BudgetComparison.figure(result)
            .orElseThrow(
                () ->
                    new BadInput(
                        "--budget",
                        stated,
                        "has nothing to be compared with",
                        "any kind but linearity"));
    return result.kind() == StudyKind.NESTED && options.otherPieces()
        ? BudgetComparison.ofMost(figure, stated)
        : BudgetComparison.of(figure, stated);
  }
}
