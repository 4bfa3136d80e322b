package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import org.chordlog.Await;

/** What a server offers of TLS, and whom it lets in without. */
public record PostgresTls(PostgresServer server) {
  private static final String BY_TLS = "hostssl all all 127.0.0.1/32 scram-sha-256\n";

  /**
   * From now on others than the superuser are let in by TLS alone, with that certificate and its
   * key, NAME.pem and NAME.key; connections that are open stay.
   */
  public void use(Path certificate) throws Exception {
    String name = String.valueOf(certificate.getFileName());
    Path key = certificate.resolveSibling(name.replace(".pem", ".key"));
    server.letIn(BY_TLS);
    set("ssl_key_file", own(key).toString());
    set("ssl_cert_file", own(certificate).toString());
    set("ssl", "on");
    reload("ssl_cert_file", server.data().resolve(name).toString());
  }

  /** TLS is offered no more, and others than the superuser are not let in without. */
  public void refuse() throws Exception {
    set("ssl", "off");
    reload("ssl", "off");
  }

  /** A copy that only the server's user may read. */
  private Path own(Path file) throws IOException {
    Path copy = server.data().resolve(String.valueOf(file.getFileName()));
    Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
    Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-------"));
    PostgresPrograms.give(copy);
    return copy;
  }

  private void set(String setting, String value) {
    server.execute(PostgresServer.SUPERUSER, "ALTER SYSTEM SET " + setting + " = '" + value + "'");
  }

  /** New connections have what the server has read. */
  private void reload(String setting, String value) throws Exception {
    server.execute(PostgresServer.SUPERUSER, "SELECT pg_reload_conf()");
    Await.until(
        () -> {
          try (Connection connection = server.connect(PostgresServer.SUPERUSER);
              ResultSet shown = connection.createStatement().executeQuery("SHOW " + setting)) {
            return shown.next() && value.equals(shown.getString(1));
          }
        },
        () -> Files.readString(server.log()));
  }
}
