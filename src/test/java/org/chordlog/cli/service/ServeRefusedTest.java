package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A start that is refused names what was typed, and what is wrong with it. */
final class ServeRefusedTest {
  @TempDir Path folder;

  private void refused(String words, String... options) {
    Ran ran = Ran.command(List.of("serve", "--data", folder.resolve("data").toString()), options);
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran::err);
    assertTrue(ran.err().contains(words), ran::err);
  }

  /** An address of TEST-NET-1 (RFC 5737), which no computer has. */
  @Test
  void anAddressThatIsNotOfThisComputerIsNoPortInUse() {
    refused(
        "--host: 192.0.2.1 is not an address of this computer",
        "--host",
        "192.0.2.1",
        "--port",
        "0",
        "--unencrypted");
  }

  @Test
  void aPortThatIsInUseIsNamed() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String port = Integer.toString(taken.getLocalPort());
      refused("--port: " + port + " is in use on 127.0.0.1", "--port", port);
    }
  }

  @Test
  void aCountOfPagesIsNamedByItsOption() {
    refused("--event-clients: 0 is out of range", "--event-clients", "0");
  }

  /** As where a script's variable is not set: it meant the folder that the command ran in. */
  @Test
  void aDataDirectoryWithoutANameIsRefused() {
    Ran ran = Ran.command("serve", "--data", "", "--port", "0");
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran::err);
    assertTrue(ran.err().contains("--data: '' is not the name of a file or folder"), ran::err);
    assertTrue(Files.notExists(Path.of("chordlog.db")));
  }
}
