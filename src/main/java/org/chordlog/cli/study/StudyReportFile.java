package org.chordlog.cli.study;

import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.common.ReportFile;
import org.chordlog.report.StudyPdf;
import org.chordlog.report.StudyReport;
import org.chordlog.store.Store;
import org.chordlog.web.StudyReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the report of a study that was done at a station. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Writes the report of a complete study as PDF of three pages at most.",
      "The service may go on meanwhile."
    })
final class StudyReportFile implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--study",
      required = true,
      paramLabel = "N",
      description = "Number of the study.")
  private long study;

  @Mixin private ReportFile file;

  @Option(names = "--json", description = "Tell what was written as JSON.")
  private boolean json;

  /** What was written. */
  record Written(String file, long study) {}

  @Override
  public Integer call() {
    file.ending(".pdf");
    try (Store store = file.open()) {
      StudyReport.Printing printing =
          new StudyReport.Printing(file.now(), file.zone(), file.unit());
      file.write(StudyPdf.write(new StudyReports(store).of(study, printing)));
    }
    String text = "%s: study %s".formatted(file.out(), study);
    spec.commandLine()
        .getOut()
        .println(json ? JsonText.of(new Written(file.out().toString(), study)) : text);
    return ExitCode.WELL;
  }
}
