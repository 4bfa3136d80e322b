package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Beyond this computer passwords do not travel unencrypted by an oversight. */
final class PlainReachTest {
  @TempDir Path directory;

  @Test
  void withoutACertificateItDoesNotStart() throws Exception {
    Path data = directory.resolve("data");
    Ran ran = Ran.command("serve", "--host", "0.0.0.0", "--port", "0", "--data", data.toString());
    assertEquals(2, ran.code(), ran::err);
    assertTrue(ran.err().contains("--unencrypted"), ran::err);
    assertTrue(Files.notExists(data), "nothing was made");
  }
}
