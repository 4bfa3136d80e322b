package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A service does not start with a file of alerts that tells nobody of what it should. */
final class ServeAlertsTest {
  @TempDir Path folder;

  private Ran serve(String... more) {
    List<String> start =
        List.of("serve", "--port", "0", "--data", folder.resolve("data").toString());
    return Ran.command(start, more);
  }

  @Test
  void aFaultInTheFileBesideTheStationFileIsToldWithItsPlace() throws Exception {
    Files.createDirectory(folder.resolve("data"));
    Path unused =
        Files.writeString(
            folder.resolve("data").resolve("alerts.yaml"),
            "site: Invented shop\npages: http://127.0.0.1:8080/\ntimeZone: Mars\n");
    Ran refused = serve();
    assertEquals(ExitCode.BAD_INPUT, refused.code());
    assertTrue(
        refused.err().contains("timeZone: Mars is not a time zone (line 3 column"), refused.err());
    assertTrue(refused.err().contains("of alerts.yaml)"), refused.err());
    assertTrue(Files.notExists(folder.resolve("data").resolve("chordlog.db")));
  }

  /** A service reads several files: a key alone does not say which one lacks it. */
  @Test
  void aKeyThatIsMissingIsToldWithItsFile() throws Exception {
    Path data = Files.createDirectory(folder.resolve("data"));
    Path unused = Files.writeString(data.resolve("plant.yaml"), "user: line-1\n");
    Ran refused = serve();
    assertEquals(ExitCode.BAD_INPUT, refused.code());
    assertTrue(refused.err().contains("passwordFile is missing (in plant.yaml)"), refused.err());
  }

  @Test
  void aFileInPlaceOfTheDataDirectoryIsNamed() throws Exception {
    Path unused = Files.createFile(folder.resolve("data"));
    Ran refused = serve();
    assertEquals(ExitCode.BAD_INPUT, refused.code());
    assertTrue(refused.err().startsWith("--data: "), refused.err());
    assertTrue(refused.err().contains("data is not a folder"), refused.err());
  }

  @Test
  void aFileThatIsNamedHasToBeThere() {
    Ran refused = serve("--alerts", folder.resolve("none.yaml").toString());
    assertEquals(ExitCode.BAD_INPUT, refused.code());
    assertTrue(refused.err().contains("none.yaml does not exist"), refused.err());
  }
}
