package org.chordlog.cli.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a simulator would overwrite, and where it can't write, is said before it plays. */
final class SimulateRefusedTest {
  @TempDir Path folder;

  private static void refused(String words, String option, String value) {
    Ran ran = Ran.command("simulate", "--until-input-ends", option, value);
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran::err);
    assertTrue(ran.err().contains(words), ran::err);
  }

  /** It took its place, and was gone when the simulator ended. */
  @Test
  void aFileIsNotReplacedByALink() throws Exception {
    Path file = Files.writeString(folder.resolve("readings.csv"), "precious");
    refused("--link: " + file + " exists and is no link", "--link", file.toString());
    assertEquals("precious", Files.readString(file));
  }

  @Test
  void aFolderThatIsNotThereAndAPortThatIsNoneAreNamed() {
    String nowhere = folder.resolve("none").resolve("x").toString();
    refused("--link: " + nowhere + " can't be written", "--link", nowhere);
    refused("--truth: " + nowhere + " can't be written", "--truth", nowhere);
    refused("--tcp: 70000 is out of range", "--tcp", "70000");
  }

  /** In no words of the library that reads it. */
  @Test
  void whatAScenarioLacksIsNamed() throws Exception {
    Path file = Files.writeString(folder.resolve("hoops.yaml"), "name: hoops\nseed: 1\n");
    refused("is missing; allowed: a value, as in canopy-hoops", "--scenario", file.toString());
    String demo = Files.readString(Path.of("demo-data", "canopy-hoops.yaml"));
    Files.writeString(file, demo.replace("seed: 20260", "seed: twelve"));
    refused("seed: twelve is not understood here", "--scenario", file.toString());
    Files.writeString(file, demo.replace("  seatSdMm", "  seatMm: 1\n  seatSdMm"));
    refused("operator.seatMm is no key of a scenario", "--scenario", file.toString());
  }
}
