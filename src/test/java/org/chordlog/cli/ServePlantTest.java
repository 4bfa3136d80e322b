package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code serve --plant} refuses before it asks any database. */
final class ServePlantTest {
  private static final String URL = "postgresql://127.0.0.1:1/chordlog";
  @TempDir Path directory;

  private String password() throws Exception {
    Path file = Files.writeString(directory.resolve("password"), "hidden words\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    return file.toString();
  }

  private static Ran serve(String... options) throws Exception {
    List<String> all = new ArrayList<>(List.of("serve", "--port", "0"));
    all.addAll(List.of(options));
    return Ran.command(all.toArray(String[]::new));
  }

  private static void refused(String option, Ran ran) {
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains(option), ran.err());
    assertFalse(ran.err().contains("hidden words"), ran.err());
  }

  @Test
  void whatIsMissingOrMeansNothingIsNamed() throws Exception {
    refused("--user", serve("--plant", URL, "--password-file", password()));
    refused("--password-file", serve("--plant", URL, "--user", "pages"));
    refused("--user", serve("--user", "pages"));
    refused("--password-file", serve("--password-file", password()));
    refused(
        "--data",
        serve(
            "--plant",
            URL,
            "--user",
            "pages",
            "--password-file",
            password(),
            "--data",
            directory.toString()));
  }

  @Test
  void aPasswordInTheUrlIsRefusedAndNotRepeated() throws Exception {
    refused(
        "database",
        serve(
            "--plant",
            "postgresql://pages:hidden words@127.0.0.1:1/chordlog",
            "--user",
            "pages",
            "--password-file",
            password()));
  }

  @Test
  void aPasswordThatEverybodyMayReadIsRefused() throws Exception {
    Path file = Path.of(password());
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    refused("--password-file", serve("--plant", URL, "--user", "p", "--password-file", "" + file));
  }
}
