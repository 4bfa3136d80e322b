package org.chordlog.cli;

import static java.util.stream.Collectors.joining;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.chordlog.Main;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.Test;

/** A shell that names no language still gets every sign, and is told what it can't give. */
final class OutputCharsetTest {
  @Test
  void signsArePrintedWhereTheLocaleIsC() throws Exception {
    ProcessBuilder builder =
        Children.program(Main.class, "128m", "radius", "--depth=2.735", "--span=200")
            .redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process = Children.start(builder);
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    assertTrue(said.contains("1830 ± 16 mm"), said);
  }

  /** Typed in UTF-8, whatever the locale of this test is. */
  @Test
  void aLetterThatTheLocaleDoesNotKnowIsNotTakenForAnother() throws Exception {
    String quoted =
        Children.program(Main.class, "128m", "analyse").command().stream()
            .map(each -> "'" + each + "'")
            .collect(joining(" "));
    String typed = "LC_ALL=C exec " + quoted + " \"$(printf 'J\\303\\266rg')\"";
    Process process =
        Children.start(new ProcessBuilder("/bin/sh", "-c", typed).redirectErrorStream(true));
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(ExitCode.BAD_INPUT, process.waitFor(), said);
    assertTrue(said.contains("locale for UTF-8, as with LC_ALL"), said);
    assertEquals(1, said.lines().count(), said);
  }
}
