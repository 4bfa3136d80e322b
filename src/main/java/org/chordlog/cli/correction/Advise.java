package org.chordlog.cli.correction;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Correct by how much, or leave alone: over a file, or line by line as pieces come. */
@Command(
    name = "advise",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Says for each piece by how much to correct the rollers, or to leave them alone.",
      "FILE is a CSV file with a row for each reading. Events named in a row happened before"
          + " its piece, in the order set-up, lot, correction. A row without a radius is an event"
          + " alone; the word flat in place of a radius is a flat. Lengths L are in --unit.",
      "Yield strengths on the certificates of lots foretell the first piece of a new lot; they"
          + " need --young, --yield-uncertainty and --section (tube, round or flat).",
      "",
      "--follow reads one JSON object from each line and answers it with one line of JSON,"
          + " numbers in mm, sentences in --unit:",
      "  {\"setUp\":{}}  {\"lot\":\"B\"}  {\"correction\":{\"before\":12.4,\"after\":12.5}}",
      "  {\"piece\":{\"radiusMm\":1803.1,\"standardUncertaintyMm\":0.6}}  (null radius: flat)",
      "  {\"lot\":{\"name\":\"B\",\"yieldMpa\":248}}",
      "  {\"target\":{\"targetMm\":1900,\"toleranceMm\":12}}  {\"job\":{\"targetMm\":900,…}}",
      "  {\"gauge\":{\"doubt\":\"the zero is stale\"}}  (no advice until {\"gauge\":{}})",
      "A line that is refused is answered by {\"error\":…}; the next one goes on.",
      "Exit code 1 if a row or line was refused."
    },
    footer = {
      "",
      "Measure and adjust only with the rollers stopped and the drive locked out;",
      "the machine's manual and local rules come first."
    })
public final class Advise implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", arity = "0..1", description = "CSV; not with --follow.")
  private @Nullable Path file;

  @Option(names = "--follow", description = "Read JSON lines from standard input.")
  private boolean follow;

  @Mixin private JobOptions job = new JobOptions();

  @Mixin private ScaleOptions scale = new ScaleOptions();

  @Mixin private RowOptions columns = new RowOptions();

  @Option(names = "--json", description = "Print JSON; numbers in mm, sentences in --unit.")
  private boolean json;

  @Override
  public Integer call() throws IOException {
    Path csv = file;
    if (follow == (csv != null)) {
      throw new ParameterException(spec.commandLine(), "Either FILE or --follow is needed.");
    }
    return csv == null ? follow() : file(csv);
  }

  private int follow() throws IOException {
    AdviceLines lines = new AdviceLines(job, scale);
    PrintWriter out = spec.commandLine().getOut();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    boolean refused = false;
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      if (!line.isBlank()) {
        Object answer = answer(lines, line);
        refused |= !(answer instanceof AdviceAnswer);
        out.println(AdviceLines.json(answer));
        out.flush();
      }
    }
    return refused ? ExitCode.FAULT : ExitCode.WELL;
  }

  private static Object answer(AdviceLines lines, String line) {
    try {
      return lines.take(line);
    } catch (BadInput bad) {
      return AdviceLines.refusal(bad);
    }
  }

  private int file(Path csv) {
    AdviceRows rows = new AdviceRows(job, scale, columns);
    rows.read(csv);
    PrintWriter out = spec.commandLine().getOut();
    out.println(json ? JsonText.of(rows.json()) : rows.text());
    out.flush();
    rows.excluded().forEach(spec.commandLine().getErr()::println);
    rows.refused().forEach(spec.commandLine().getErr()::println);
    return rows.refused().isEmpty() ? ExitCode.WELL : ExitCode.FAULT;
  }
}
