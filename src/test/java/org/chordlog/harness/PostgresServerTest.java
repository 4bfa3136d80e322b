package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.chordlog.Await;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
final class PostgresServerTest {
  private static long number(Connection connection, String sql) throws SQLException {
    try (ResultSet row = connection.createStatement().executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }

  @Test
  void aCopiedDatabaseHoldsWhatItsTemplateHolds() throws Exception {
    PostgresServer server = PostgresServer.shared();
    String template = server.database();
    server.execute(template, "CREATE TABLE t AS SELECT 42 AS n");
    try (Connection connection = server.connect(server.database(template))) {
      assertEquals(42, number(connection, "SELECT n FROM t"));
    }
  }

  @Test
  void othersThanTheSuperuserNeedTheirPassword() {
    PostgresServer server = PostgresServer.shared();
    String database = server.database();
    server.execute(database, "CREATE ROLE needs_password LOGIN PASSWORD 'right'");
    String url = server.url(database);
    assertThrows(
        SQLException.class, () -> DriverManager.getConnection(url, "needs_password", "wrong"));
  }

  @Test
  void aKilledServerKeepsWhatWasCommittedAndLeavesNothingBehind() throws Exception {
    PostgresServer server = PostgresServer.fresh();
    try (server) {
      String database = server.database();
      server.execute(database, "CREATE TABLE t AS SELECT 7 AS n");
      server.kill();
      server.start();
      try (Connection connection = server.connect(database)) {
        assertEquals(7, number(connection, "SELECT n FROM t"));
      }
    }
    assertFalse(Files.exists(server.data()));
  }

  @Test
  void aStandbyTakesOverWhatItHasReceived() throws Exception {
    try (PostgresServer primary = PostgresServer.fresh()) {
      String database = primary.database();
      primary.execute(database, "CREATE TABLE t AS SELECT 9 AS n");
      try (PostgresServer standby = PostgresServer.standbyOf(primary)) {
        standby.start();
        primary.kill();
        standby.promote();
        standby.execute(database, "INSERT INTO t VALUES (10)");
        try (Connection connection = standby.connect(database)) {
          assertEquals(19, number(connection, "SELECT sum(n) FROM t"));
        }
      }
    }
  }

  /** Also what should have ended the server with the run was killed. */
  @Test
  void theNextRunRemovesWhatAKilledOneLeft() throws Exception {
    Process run =
        Children.program(Run.class, "64m").redirectError(ProcessBuilder.Redirect.INHERIT).start();
    try (BufferedReader out = run.inputReader(StandardCharsets.UTF_8)) {
      Path data = Path.of(out.readLine());
      ProcessHandle server = server(data);
      assertTrue(server.isAlive());
      List<ProcessHandle> reapers =
          run.descendants()
              .filter(each -> !each.info().commandLine().orElse("").contains("postgres"))
              .toList();
      reapers.forEach(ProcessHandle::destroyForcibly);
      run.destroyForcibly().waitFor();
      assertTrue(server.isAlive());
      PostgresServer.fresh().close();
      Await.until(() -> !server.isAlive() && Files.notExists(data.getParent()));
    }
  }

  private static ProcessHandle server(Path data) throws Exception {
    String pid = Files.readString(data.resolve("postmaster.pid")).lines().findFirst().orElseThrow();
    return ProcessHandle.of(Long.parseLong(pid)).orElseThrow();
  }

  /** Stands for a run of tests: has a server, and waits. */
  static final class Run {
    private Run() {}

    public static void main(String[] arguments) throws Exception {
      System.out.println(PostgresServer.fresh("-c", "fsync=off").data());
      new CountDownLatch(1).await();
    }
  }
}
