package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.charset.StandardCharsets;
import org.chordlog.Main;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The real program, with what the shell gives it to write to. */
@Tag("slow")
@EnabledOnOs(OS.LINUX)
final class StandardOutputTest {
  private static ProcessBuilder card(String file) {
    return Children.program(
        Main.class, "128m", "radius", "--span=200", "--from=1700", "--to=1900", "--card=" + file);
  }

  private static ProcessBuilder radius() {
    return Children.program(Main.class, "128m", "radius", "--span=200", "--depth=2.735");
  }

  /** /dev/full takes no byte (full(4)). */
  @Test
  void whatADiskThatIsFullDidNotTakeIsNotDone() throws Exception {
    Process process = Children.start(radius().redirectOutput(new File("/dev/full")));
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(ExitCode.FAULT, process.waitFor(), said);
    assertTrue(said.startsWith("Not all could be written"), said);
  }

  /** As the shell passes on {@code >(gzip > card.gz)}: what stands behind the name has none. */
  @Test
  void aFileMayBeAPipe() throws Exception {
    Process process = Children.start(card("/dev/stdout"));
    byte[] card = process.getInputStream().readAllBytes();
    String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(ExitCode.WELL, process.waitFor(), said);
    assertTrue(new String(card, StandardCharsets.ISO_8859_1).startsWith("%PDF"));
  }
}
