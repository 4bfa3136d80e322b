package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.store.Kept;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Other users of the computer read nothing of a running store. */
final class OwnFilesTest {
  @TempDir Path folder;

  @Test
  void theFolderAndEveryFileInItAreItsOwnersAlone() throws Exception {
    Path data = folder.resolve("new/data");
    try (SqliteStore store = SqliteStore.open(data)) {
      var unused = store.readings().append(Kept.first(store)).join();
      new SqliteFiles(data).backup(folder.resolve("copy.db"));
      assertEquals("rwx------", permissions(data));
      try (Stream<Path> files = Files.list(data)) {
        List<String> others =
            files
                .filter(Files::isRegularFile)
                .filter(each -> !permissions(each).equals("rw-------"))
                .map(each -> each.getFileName() + " " + permissions(each))
                .sorted()
                .toList();
        assertEquals(List.of(), others);
      }
    }
  }

  @Test
  void whatTheAdministratorMakesInTheFolderBelongsToItsOwner() throws Exception {
    Path data = Files.createDirectory(folder.resolve("data"));
    SqliteStore.open(data).close();
    UserPrincipal service = another();
    Assumptions.assumeTrue(given(data, service), "only root gives files away");
    new SqliteFiles(data).backup(folder.resolve("copy.db"));
    Path made = data.resolve("made");
    OwnFiles.create(made);
    for (Path each : List.of(data.resolve(LastBackup.FILE_NAME), made)) {
      assertEquals(service, Files.getOwner(each));
      assertEquals("rw-------", permissions(each));
    }
  }

  private UserPrincipal another() throws IOException {
    return folder.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody");
  }

  private static boolean given(Path path, UserPrincipal owner) {
    try {
      return Files.setOwner(path, owner) != null;
    } catch (IOException e) {
      return false;
    }
  }

  private static String permissions(Path path) {
    try {
      return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
