package org.chordlog.cli.records;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.chordlog.chart.ViewUnit;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.common.ReportFile;
import org.chordlog.measure.BadInput;
import org.chordlog.monitor.Monitor;
import org.chordlog.report.Csv;
import org.chordlog.report.DecimalMark;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;
import org.chordlog.store.Store;
import org.chordlog.verdict.Counted;
import org.chordlog.web.JobReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the report of a job. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the report of a job as PDF, or its statistics as CSV (lengths in mm).",
      "The service may go on meanwhile."
    })
public final class Report implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--job", required = true, paramLabel = "N", description = "Number of the job.")
  private long job;

  @Option(names = "--certificate", description = "Without the readings; page one says it all.")
  private boolean certificate;

  @Mixin private ReportFile file;

  @Mixin private DecimalOption decimal;

  @Option(names = "--json", description = "Tell what was written as JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    boolean pdf = file.ending(".pdf", ".csv").equals(".pdf");
    if (!pdf && file.unit() != ViewUnit.MM) {
      throw new BadInput(
          "--unit", "inch", "is for PDF", "mm for CSV, whose columns name their unit");
    }
    if (pdf && decimal.mark != DecimalMark.POINT) {
      throw new BadInput("--decimal", "comma", "is for CSV", "without it for PDF");
    }
    try (Store store = file.open();
        Monitor monitor = new Monitor(store)) {
      long behind = 1;
      while (behind > 0) { // each look takes in more of a long job
        behind = monitor.standing(job).behind();
      }
      JobReport report = new JobReports(store, monitor).of(job, printing());
      file.write(pdf ? PdfReport.write(report) : statistics(report));
      tell(report);
    }
    return ExitCode.WELL;
  }

  private JobReport.Printing printing() {
    return new JobReport.Printing(file.now(), file.zone(), file.unit(), !certificate);
  }

  private byte[] statistics(JobReport report) throws IOException {
    StringBuilder text = new StringBuilder();
    Csv.figures(report.job(), report.summaries(), decimal.mark, text);
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void tell(JobReport report) {
    PrintWriter to = spec.commandLine().getOut();
    String text =
        "%s: job %s, %s".formatted(file.out(), job, Counted.of(report.readingCount(), "reading"));
    to.println(
        json ? JsonText.of(new Written(file.out().toString(), job, report.readingCount())) : text);
    to.flush();
  }

  /** What was written. */
  record Written(String file, long job, long readings) {}
}
