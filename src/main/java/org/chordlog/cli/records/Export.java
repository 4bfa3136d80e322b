package org.chordlog.cli.records;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.OutputFile;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.report.DecimalMark;
import org.chordlog.report.ReadingCsv;
import org.chordlog.report.SampleCsv;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.Counted;
import org.chordlog.web.ChangesCsv;
import org.chordlog.web.JobQif;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Readings, what happened in a job, or raw samples, as CSV. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Writes readings as CSV, with everything their radii were computed from.",
      "With --changes what happened in a job instead: events, exclusions, limits, answers to"
          + " signals, with who, when and why.",
      "With --samples the raw samples of a station instead.",
      "With --format qif a job as QIF 3.0 results (ISO 23952): readings, decisions,"
          + " uncertainty, capability, and the gauge with its calibration and studies."
    })
public final class Export implements Callable<Integer> {
  private static final int QIF_BUFFER_BYTES = 1 << 16;

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Mixin private DecimalOption decimal;

  @Option(names = "--job", paramLabel = "N", description = "Only this job's readings.")
  private @Nullable Long job;

  @Option(
      names = "--changes",
      description = "What happened in the job instead of its readings; needs --job.")
  private boolean changes;

  @Option(names = "--samples", paramLabel = "STATION", description = "Samples of this station.")
  private @Nullable String station;

  @Option(
      names = "--from",
      paramLabel = "N",
      description = "First sample (see first_sample of a reading).")
  private @Nullable Long from;

  @Option(names = "--to", paramLabel = "N", description = "Last sample.")
  private @Nullable Long to;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "csv",
      description = "csv or qif; qif needs --job and --output (${DEFAULT-VALUE}).")
  private String format = "csv";

  @Option(names = "--output", paramLabel = "FILE", description = "File instead of standard output.")
  private @Nullable Path output;

  @Option(
      names = "--seal",
      description =
          "End the readings with a comment line that seals those before it, for chordlog verify.")
  private boolean seal;

  @Option(names = "--json", description = "Tell the count as JSON; needs --output.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    if (json && output == null) {
      throw new BadInput("--json", "alone", "would mix with the CSV", "together with --output");
    }
    refuseIdle();
    try (Store store = Stores.openForReading(data.directory)) {
      DataOption.requireJob(store, job);
      requireSamples(store);
      if (qif()) {
        report(toQif(store));
        return ExitCode.WELL;
      }
      if (output == null) {
        write(store, spec.commandLine().getOut());
        spec.commandLine().getOut().flush();
      } else {
        report(toFile(store, output));
      }
    }
    return ExitCode.WELL;
  }

  private void requireSamples(Store store) {
    if (station != null && store.traces().lastSequence(station) == 0) {
      throw new BadInput("--samples", station, "has no samples", "a station that has measured");
    }
  }

  /** What would be passed over in silence. */
  private void refuseIdle() {
    if (station == null && (from != null || to != null)) {
      String option = from == null ? "--to" : "--from";
      throw new BadInput(option, "", "counts samples, not readings", "together with --samples");
    }
    if (changes && (job == null || station != null || seal || qif())) {
      throw new BadInput(
          "--changes",
          "",
          "is what happened in one job",
          "with --job, without --samples, --seal or --format qif");
    }
    if (station != null && (job != null || seal)) {
      throw new BadInput(
          job == null ? "--seal" : "--job", "", "is for readings", "without --samples");
    }
    if (decimal.mark == DecimalMark.COMMA && (station != null || seal || qif())) {
      throw new BadInput(
          "--decimal",
          "comma",
          "is for readings or changes as CSV",
          "without --samples, --seal or --format qif");
    }
  }

  private boolean qif() {
    if (!format.equals("csv") && !format.equals("qif")) {
      throw new BadInput("--format", format, "is not known", "csv or qif");
    }
    return format.equals("qif");
  }

  private long toQif(Store store) {
    if (job == null || output == null || station != null) {
      throw new BadInput("--format", format, "is one job in one file", "with --job and --output");
    }
    long one = job;
    try (Monitor monitor = new Monitor(store)) {
      OutputFile.write(
          "--output",
          output,
          data.directory,
          out -> {
            OutputStream buffered = new BufferedOutputStream(out, QIF_BUFFER_BYTES);
            new JobQif(store, monitor).write(one, buffered);
            buffered.flush();
          });
      return store.readings().countOfJob(one);
    }
  }

  private long toFile(Store store, Path file) {
    long[] count = new long[1];
    OutputFile.write(
        "--output",
        file,
        data.directory,
        out -> {
          Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
          count[0] = write(store, writer);
          writer.flush();
        });
    return count[0];
  }

  private long write(Store store, Appendable out) throws IOException {
    if (changes) {
      Job one = store.jobs().find(Objects.requireNonNull(job)).orElseThrow();
      return new ChangesCsv(store, decimal.mark).write(one, out);
    }
    if (station == null) {
      ReadingCsv csv = new ReadingCsv(store, decimal.mark);
      return seal ? csv.writeSealed(job, out) : csv.write(job, out);
    }
    return SampleCsv.write(
        store.traces(), station, from == null ? 0 : from, to == null ? Long.MAX_VALUE : to, out);
  }

  private void report(long count) {
    String what = changes ? "change" : station == null ? "reading" : "sample";
    spec.commandLine()
        .getOut()
        .println(
            json
                ? "{\"" + what + "s\": " + count + "}"
                : Counted.of(count, what) + " in " + output);
  }
}
