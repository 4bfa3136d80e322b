package org.chordlog.cli.records;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.chordlog.monitor.Monitor;
import org.chordlog.report.Csv;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.JobReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the report of a job. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the report of a job as PDF, or its statistics as CSV;",
      "also while the service runs."
    })
public final class Report implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "JOB", description = "Id of the job.")
  private long job;

  @Option(names = "--certificate", description = "Without the readings; page one says it all.")
  private boolean certificate;

  @Option(names = "--data", required = true, paramLabel = "DIR", description = "Data directory.")
  private Path data;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "File to write: .pdf for the report, .csv for the statistics.")
  private Path out;

  @Option(
      names = "--zone",
      defaultValue = "UTC",
      paramLabel = "ZONE",
      description = "Time zone of the times printed (${DEFAULT-VALUE}).")
  private ZoneId zone;

  @Option(names = "--json", description = "Tell what was written as JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    boolean pdf = pdf();
    if (!Files.isDirectory(data)) {
      throw new BadInput("--data", data, "is not a directory", "the data directory of a service");
    }
    try (Store store = Stores.openForReading(data);
        Monitor monitor = new Monitor(store)) {
      long behind = 1;
      while (behind > 0) { // each look takes in more of a long job
        behind = monitor.standing(job).behind();
      }
      JobReport report =
          new JobReports(store, monitor)
              .of(job, new JobReport.Printing(Clock.systemUTC().instant(), zone, !certificate));
      write(pdf ? PdfReport.write(report) : statistics(report));
      tell(report);
    }
    return ExitCode.WELL;
  }

  private boolean pdf() {
    String name = out.toString().toLowerCase(Locale.ROOT);
    if (!name.endsWith(".pdf") && !name.endsWith(".csv")) {
      throw new BadInput("--out", out, "has an ending that is not known", ".pdf, .csv");
    }
    return name.endsWith(".pdf");
  }

  private static byte[] statistics(JobReport report) throws IOException {
    StringBuilder text = new StringBuilder();
    Csv.figures(report.summaries(), text);
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void write(byte[] bytes) {
    try {
      Files.write(out, bytes);
    } catch (IOException e) {
      throw new BadInput("--out", out, "can't be written", "a file in a directory that is there");
    }
  }

  private void tell(JobReport report) {
    PrintWriter to = spec.commandLine().getOut();
    String text = "%s: job %d, %d readings".formatted(out, job, report.readingCount());
    to.println(json ? JsonText.of(new Written(out.toString(), job, report.readingCount())) : text);
    to.flush();
  }

  /** What was written. */
  record Written(String file, long job, long readings) {}
}
