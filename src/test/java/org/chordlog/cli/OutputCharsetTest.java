package org.chordlog.cli;

import static java.util.stream.Collectors.joining;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.Test;

/** A shell that names no language still gets every sign, and is told what it can't give. */
final class OutputCharsetTest {
  @Test
  void signsArePrintedWhereTheLocaleIsC() throws Exception {
    List<String> command = ServiceProcess.briefJava(System.getProperty("java.class.path"));
    command.addAll(List.of("org.chordlog.Main", "radius", "--depth", "2.735", "--span", "200"));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process = Children.start(builder);
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    assertTrue(said.contains("1830 ± 16 mm"), said);
  }

  /** Typed in UTF-8, whatever the locale of this test is. */
  @Test
  void aLetterThatTheLocaleDoesNotKnowIsNotTakenForAnother() throws Exception {
    List<String> command = ServiceProcess.briefJava(System.getProperty("java.class.path"));
    String quoted = command.stream().map(each -> "'" + each + "'").collect(joining(" "));
    String typed =
        "LC_ALL=C exec " + quoted + " org.chordlog.Main analyse \"$(printf 'J\\303\\266rg')\"";
    Process process =
        Children.start(new ProcessBuilder("/bin/sh", "-c", typed).redirectErrorStream(true));
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(ExitCode.BAD_INPUT, process.waitFor(), said);
    assertTrue(said.contains("locale for UTF-8, as with LC_ALL"), said);
    assertEquals(1, said.lines().count(), said);
  }
}
