package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.Test;

/** A shell that names no language still gets every sign. */
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
}
