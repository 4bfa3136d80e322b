package org.chordlog.cli.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.chordlog.report.StudyPdf;
import org.chordlog.report.StudyReport;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.StudyReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the report of a study that was done at a station. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Writes the report of a complete study as PDF of three pages at most;",
      "also while the service runs."
    })
public final class StudyReportFile implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "STUDY", description = "Id of the study.")
  private long study;

  @Option(names = "--data", required = true, paramLabel = "DIR", description = "Data directory.")
  private Path data;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "File to write, .pdf.")
  private Path out;

  @Option(
      names = "--zone",
      defaultValue = "UTC",
      paramLabel = "ZONE",
      description = "Time zone of the times printed (${DEFAULT-VALUE}).")
  private ZoneId zone;

  @Option(names = "--json", description = "Tell what was written as JSON.")
  private boolean json;

  /** What was written. */
  record Written(String file, long study) {}

  @Override
  public Integer call() {
    if (!out.toString().toLowerCase(Locale.ROOT).endsWith(".pdf")) {
      throw new BadInput("--out", out, "has an ending that is not known", ".pdf");
    }
    if (!Files.isDirectory(data)) {
      throw new BadInput("--data", data, "is not a directory", "the data directory of a service");
    }
    try (Store store = Stores.openForReading(data)) {
      write(
          StudyPdf.write(
              new StudyReports(store)
                  .of(study, new StudyReport.Printing(Clock.systemUTC().instant(), zone))));
    }
    String text = "%s: study %d".formatted(out, study);
    spec.commandLine()
        .getOut()
        .println(json ? JsonText.of(new Written(out.toString(), study)) : text);
    return ExitCode.WELL;
  }

  private void write(byte[] pdf) {
    try {
      Files.write(out, pdf);
    } catch (IOException e) {
      throw new BadInput("--out", out, "can't be written", "a file in a directory that is there");
    }
  }
}
