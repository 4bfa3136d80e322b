package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** PostgreSQL's programs of Debian's package, which refuse to run as root. */
final class PostgresPrograms {
  private static final Path PROGRAMS = Path.of("/usr/lib/postgresql/15/bin");

  private PostgresPrograms() {}

  /** Says what to install where they are not there. */
  static void require() {
    if (!Files.isExecutable(PROGRAMS.resolve("postgres"))) {
      throw new AssertionError(
          PROGRAMS
              + " has no postgres: install postgresql-15 (Debian: apt-get install postgresql)");
    }
  }

  /** To the user that the server runs as. */
  static void give(Path file) throws IOException {
    if (isRoot()) {
      Files.setOwner(
          file,
          file.getFileSystem()
              .getUserPrincipalLookupService()
              .lookupPrincipalByName(PostgresServer.SUPERUSER));
    }
  }

  private static boolean isRoot() {
    return "root".equals(System.getProperty("user.name"));
  }

  /** Runs one to its end in that folder; what it wrote. */
  static String run(Path folder, String... command) throws IOException {
    Path said = Files.createTempFile(folder, "said", ".txt");
    Process running =
        Children.start(program(folder, List.of(command)).redirectOutput(said.toFile()));
    try {
      if (!running.waitFor(120, TimeUnit.SECONDS) || running.exitValue() != 0) {
        running.destroyForcibly();
        throw new AssertionError(List.of(command) + ": " + Files.readString(said));
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    return Files.readString(said);
  }

  /** One of them with its arguments, as the user of PostgreSQL. */
  static ProcessBuilder program(Path folder, List<String> command) {
    List<String> all = new ArrayList<>();
    if (isRoot()) { // the server refuses to run as root
      all.addAll(
          List.of(
              "setpriv",
              "--reuid",
              PostgresServer.SUPERUSER,
              "--regid",
              PostgresServer.SUPERUSER,
              "--clear-groups"));
    }
    all.add(PROGRAMS.resolve(command.get(0)).toString());
    all.addAll(command.subList(1, command.size()));
    ProcessBuilder builder =
        new ProcessBuilder(all).directory(folder.toFile()).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C.UTF-8");
    return builder;
  }
}
