package org.chordlog.cli.common;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import picocli.CommandLine.Option;

/** Options of a command that writes a report from a data directory, also beside its service. */
public final class ReportFile {
  @Option(names = "--data", required = true, paramLabel = "DIR", description = "Data directory.")
  private Path data;

  @Option(
      names = "--output",
      required = true,
      paramLabel = "FILE",
      description = "File to write; its ending says which kind.")
  private Path out;

  @Option(
      names = "--zone",
      defaultValue = "UTC",
      paramLabel = "ZONE",
      description = "Time zone of the times printed (${DEFAULT-VALUE}).")
  private ZoneId zone;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      defaultValue = "mm",
      description = "Unit of all lengths in a PDF: mm or inch (mm).")
  private ViewUnit unit = ViewUnit.MM;

  /** Which of these endings the file has; {@link BadInput} for another one. */
  public String ending(String... allowed) {
    String name = out.toString().toLowerCase(Locale.ROOT);
    return Arrays.stream(allowed)
        .filter(name::endsWith)
        .findFirst()
        .orElseThrow(
            () ->
                new BadInput(
                    "--output",
                    out,
                    "has an ending that is not known",
                    String.join(", ", allowed)));
  }

  /** The store, to be read and closed. */
  public Store open() {
    return Stores.openForReading(data);
  }

  /**
   * Replaces the file only once all is written; throws {@link BadInput} that names {@code --output}
   * where it can't be.
   */
  public void write(byte[] bytes) {
    OutputFile.write("--output", out, data, to -> to.write(bytes));
  }

  public Path out() {
    return out;
  }

  public ViewUnit unit() {
    return unit;
  }

  public ZoneId zone() {
    return zone;
  }

  public Instant now() {
    return Clock.systemUTC().instant();
  }
}
