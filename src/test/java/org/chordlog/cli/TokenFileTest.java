package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A service with a token file that holds no real token does not start, on loopback neither. */
final class TokenFileTest {
  @TempDir Path directory;

  private Ran serve(String token) throws Exception {
    Path file = Files.writeString(directory.resolve("token"), token);
    String data = directory.resolve("data").toString();
    return Ran.command("serve", "--data", data, "--port", "0", "--token-file", file.toString());
  }

  @Test
  void anEmptyBlankOrShortOneIsRefused() throws Exception {
    for (String token : new String[] {"", " \n", "x", "fifteen-letters"}) {
      Ran refused = serve(token);
      assertEquals(2, refused.code());
      assertTrue(refused.err().contains("--token-file"), refused::err);
      assertTrue(refused.err().contains("at least 16 characters"), refused::err);
    }
    assertTrue(Files.notExists(directory.resolve("data")));
  }
}
