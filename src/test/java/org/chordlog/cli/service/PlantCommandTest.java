package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.chordlog.harness.PostgresServer;
import org.chordlog.harness.Ran;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
final class PlantCommandTest {
  @TempDir Path directory;
  private final PostgresServer server = PostgresServer.shared();
  private final String url = server.url(server.database()).substring("jdbc:".length());

  private Ran plant(String... words) {
    return Ran.command(List.of("plant"), words);
  }

  @Test
  void aPlantIsCreatedAndItsLoginsWork() throws Exception {
    assertEquals(0, plant("create", "--database", url).code());
    String again = plant("create", "--database", url, "--json").out();
    assertEquals("{\"schemaVersion\":2}", again.replaceAll("\\s", ""));
    String name = "looker " + directory.getFileName().toString().replaceAll("\\D", "");
    Path file = directory.resolve("reader");
    Ran made = plant("add-reader", name, "--new-password-file", file.toString(), "--database", url);
    assertEquals(0, made.code(), made.err());
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    String user = "chordlog_plant_" + name.replace(' ', '_');
    assertTrue(made.out().contains("The user is " + user), made.out());
    String password = Files.readString(file).strip();
    assertFalse(made.out().contains(password), "the password is in the file alone");
    try (Plant plant = Stores.openPlant(PlantAddress.of(url, user, () -> password, null))) {
      assertEquals(List.of(), plant.edges());
    }
  }

  @Test
  void aLoginThatIsRefusedLeavesNoFile() {
    plant("create", "--database", url);
    Path file = directory.resolve("edge");
    Ran refused =
        plant("add-edge", "a;b", "--new-password-file", file.toString(), "--database", url);
    assertEquals(2, refused.code());
    assertTrue(refused.err().contains("can't be the name of a login"), refused.err());
    assertFalse(Files.exists(file));
  }

  @Test
  void aFileThatIsThereIsNotOverwritten() throws Exception {
    Path file = Files.writeString(directory.resolve("precious"), "x");
    Ran refused = plant("add-edge", "A", "--new-password-file", file.toString(), "--database", url);
    assertEquals(2, refused.code());
    assertEquals("x", Files.readString(file));
  }

  @Test
  void aServerThatIsNotThereIsSaidInWords() {
    Ran failed = plant("create", "--database", "postgresql://127.0.0.1:1/plant");
    assertEquals(1, failed.code());
    assertTrue(failed.err().contains("the plant's database can't be reached"), failed.err());
  }

  /** Nobody guesses what a table of another version means. */
  @Test
  void aDatabaseOfAnotherVersionIsRefusedByCommandsAndPages() throws Exception {
    refusedEverywhere("is not the database of a plant");
    plant("create", "--database", url);
    version(99);
    refusedEverywhere("has schema version 99, made by a newer Chordlog");
    Ran created = plant("create", "--database", url);
    assertEquals(2, created.code());
    assertTrue(created.err().contains("install the newer Chordlog here"), created.err());
    version(0);
    refusedEverywhere("run 'chordlog plant create' on it, which brings it up to date");
  }

  private void version(int number) {
    server.execute(
        url.substring(url.lastIndexOf('/') + 1), "UPDATE plant.version SET version = " + number);
  }

  private void refusedEverywhere(String words) throws Exception {
    Path password = Files.writeString(directory.resolve("owner"), "not asked for");
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-------"));
    Path made = directory.resolve("made");
    List<Ran> all =
        List.of(
            plant("add-edge", "A", "--new-password-file", made.toString(), "--database", url),
            plant("add-reader", "A", "--new-password-file", made.toString(), "--database", url),
            Ran.command(
                List.of("serve", "--port", "0", "--plant", url),
                "--user",
                PostgresServer.SUPERUSER,
                "--password-file",
                password.toString()));
    for (Ran ran : all) {
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains(words), ran.err());
    }
    assertFalse(Files.exists(made));
  }
}
