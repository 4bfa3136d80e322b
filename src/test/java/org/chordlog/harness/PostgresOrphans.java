package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Folders, and servers on them, of runs that were killed before they could end them. Each folder
 * names the process that made it; where that is no more, the next run removes what is left.
 */
final class PostgresOrphans {
  private static final String PREFIX = "chordlog-postgres";
  private static final String OWNER = "owner";

  private PostgresOrphans() {}

  /** A new folder of this process. */
  static Path folder() throws IOException {
    remove();
    Path made = Files.createTempDirectory(PREFIX);
    Files.writeString(made.resolve(OWNER), Reaper.line(ProcessHandle.current()));
    return made;
  }

  static void remove() throws IOException {
    Path all = Path.of(System.getProperty("java.io.tmpdir"));
    try (DirectoryStream<Path> found = Files.newDirectoryStream(all, PREFIX + "*")) {
      for (Path each : found) {
        if (left(each)) {
          end(each);
        }
      }
    }
  }

  /** One without a name of its process may be that of a run that has just begun. */
  private static boolean left(Path folder) {
    try {
      return Reaper.named(Files.readString(folder.resolve(OWNER))).isEmpty();
    } catch (IOException e) {
      return false;
    }
  }

  private static void end(Path folder) {
    try {
      server(folder).ifPresent(PostgresOrphans::kill);
      Directories.delete(folder);
    } catch (IOException e) {
      return; // another run removes it now
    }
  }

  /** The process that the server's own note names, if it is one on that folder. */
  private static Optional<ProcessHandle> server(Path folder) throws IOException {
    Path note = folder.resolve("data").resolve("postmaster.pid");
    if (Files.notExists(note)) {
      return Optional.empty();
    }
    return Files.readString(note)
        .lines()
        .findFirst()
        .flatMap(pid -> ProcessHandle.of(Long.parseLong(pid.strip())))
        .filter(each -> each.info().commandLine().orElse("").contains(folder.toString()));
  }

  private static void kill(ProcessHandle server) {
    server.descendants().forEach(ProcessHandle::destroyForcibly);
    server.destroyForcibly();
    server.onExit().join();
  }
}
