package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.cli.Chordlog;
import picocli.CommandLine;

/** A command that ran in this process: its exit code, and what it printed. */
public record Ran(int code, String out, String err) {

  /** Runs {@code chordlog} with these words; a stack trace is never what a user should see. */
  public static Ran command(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine chordlog =
        Chordlog.commandLine(words).setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = chordlog.execute(words);
    assertFalse(err.toString().contains("\tat "), err.toString());
    return new Ran(code, out.toString(), err.toString());
  }

  /** As {@link #command}, of words that come in two parts. */
  public static Ran command(List<String> first, String... more) {
    return command(Stream.concat(first.stream(), Stream.of(more)).toArray(String[]::new));
  }

  /** As {@link #command}, of words between blanks. */
  public static Ran line(String line) {
    return command(line.split(" "));
  }
}
