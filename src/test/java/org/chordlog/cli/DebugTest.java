package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;

/** A refusal is one sentence; where in the program it came from is printed on request alone. */
final class DebugTest {
  @Test
  void theStackTraceIsPrintedOnRequest() {
    Ran plain = Ran.command("audit", "--data", "/there/is/nothing");
    StringWriter traced = new StringWriter();
    Chordlog.commandLine()
        .setErr(new PrintWriter(traced))
        .execute("audit", "--data", "/there/is/nothing", "--debug");
    assertTrue(traced.toString().startsWith(plain.err().strip()), traced.toString());
    assertTrue(traced.toString().contains("\tat org.chordlog"), traced.toString());
  }
}
