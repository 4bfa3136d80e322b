package org.chordlog.cli.service;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.chordlog.harness.PostgresServer;
import org.chordlog.harness.Ran;

/** The settings of a workshop computer and the commands that connect to its plant by them. */
record PlantFiles(Path directory, Logins logins) {
  /** {@code plant}: the URL of its database. */
  record Logins(String plant, String edge, String edgeLogin, String readerLogin) {}

  void password(String text, String rights) throws Exception {
    Path file = Files.writeString(directory.resolve("password"), text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(rights));
  }

  void write(String more) throws Exception {
    Files.writeString(
        directory.resolve("plant.yaml"),
        """
        edge: %s
        site: Main works
        database: %s
        user: %s
        passwordFile: password
        %s
        """
            .formatted(logins.edge, logins.plant, logins.edgeLogin, more));
  }

  Ran check() {
    return Ran.command("forward", "--check", "--data", directory.toString());
  }

  Ran serve() {
    return Ran.command(
        List.of("serve", "--port", "0", "--plant", logins.plant, "--user", logins.readerLogin),
        "--password-file",
        directory.resolve("password").toString(),
        "--database-certificates",
        directory.resolve("issuers.pem").toString());
  }

  Ran create() {
    return Ran.command(
        List.of("plant", "create", "--database", logins.plant, "--user", PostgresServer.SUPERUSER),
        "--database-certificates",
        directory.resolve("issuers.pem").toString());
  }
}
