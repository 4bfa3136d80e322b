package org.chordlog.harness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.Await;
import org.jspecify.annotations.Nullable;

/**
 * A PostgreSQL server of Debian's package in a temporary folder, which ends with this process. Its
 * superuser {@value #SUPERUSER} needs no password, everybody else does (scram-sha-256).
 */
public final class PostgresServer implements AutoCloseable {
  public static final String SUPERUSER = "postgres";

  private static final AtomicInteger DATABASES = new AtomicInteger();
  private static final String ACCESS =
      """
      host all %1$s 127.0.0.1/32 trust
      host replication %1$s 127.0.0.1/32 trust
      local all %1$s trust
      """
          .formatted(SUPERUSER);
  private static final String BY_PASSWORD = "host all all 127.0.0.1/32 scram-sha-256\n";

  private static @Nullable PostgresServer shared;

  private final Path folder;
  private final int port;
  private final List<String> options;
  private @Nullable Process process;

  private PostgresServer(Path folder, int port, List<String> options) {
    this.folder = folder;
    this.port = port;
    this.options = options;
  }

  /** One for all tests of this process, which make databases of their own in it. */
  public static synchronized PostgresServer shared() {
    PostgresServer open = shared;
    if (open == null) {
      open = fresh("-c", "fsync=off", "-c", "autovacuum=off");
      shared = open;
      Runtime.getRuntime().addShutdownHook(new Thread(open::close, "end-postgres"));
    }
    return open;
  }

  /** One of its own, for tests that end it; {@code options} as of the program {@code postgres}. */
  public static PostgresServer fresh(String... options) {
    PostgresPrograms.require();
    try {
      PostgresServer made = new PostgresServer(ownFolder(), freePort(), List.of(options));
      made.create();
      made.start();
      return made;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A server of a copy of another one's data, as pg_basebackup makes it; not started. */
  public static PostgresServer standbyOf(PostgresServer primary, String... options) {
    try {
      PostgresServer made = new PostgresServer(ownFolder(), freePort(), List.of(options));
      made.run(
          "pg_basebackup",
          "-h",
          "127.0.0.1",
          "-p",
          String.valueOf(primary.port),
          "-U",
          SUPERUSER,
          "-D",
          made.data().toString(),
          "-R",
          "-X",
          "stream",
          "-c",
          "fast");
      return made;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path ownFolder() throws IOException {
    Path made = PostgresOrphans.folder();
    PostgresPrograms.give(made);
    return made;
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private void create() throws IOException {
    run(
        "initdb",
        "-D",
        data().toString(),
        "-A",
        "trust",
        "-U",
        SUPERUSER,
        "--no-sync",
        "--locale=C",
        "-E",
        "UTF8");
    letIn(BY_PASSWORD);
  }

  /** A line of pg_hba.conf for all but the superuser. */
  void letIn(String others) throws IOException {
    Files.writeString(data().resolve("pg_hba.conf"), ACCESS + others);
  }

  public PostgresTls tls() {
    return new PostgresTls(this);
  }

  /** Waits until it takes connections. */
  public void start() {
    List<String> command = new ArrayList<>(List.of("postgres", "-D", data().toString()));
    command.addAll(List.of("-c", "listen_addresses=127.0.0.1", "-p", String.valueOf(port)));
    command.addAll(List.of("-k", folder.toString(), "-c", "shared_buffers=64MB"));
    command.addAll(options);
    try {
      process =
          Children.start(
              PostgresPrograms.program(folder, command)
                  .redirectOutput(Redirect.appendTo(log().toFile())));
      Await.until(this::answers, () -> Files.readString(log()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private boolean answers() {
    try (Connection connection = connect(SUPERUSER)) {
      return connection.isValid(5);
    } catch (SQLException e) {
      return false;
    }
  }

  /**
   * Runs a program of Linux on the server's processes, such as {@code taskset -acp 1}, which holds
   * them on one processor; later ones have it from the first.
   */
  public void each(String... command) throws IOException, InterruptedException {
    Process running = process;
    if (running == null) {
      throw new IllegalStateException("does not run");
    }
    List<Long> all = new ArrayList<>(List.of(running.pid()));
    running.descendants().forEach(child -> all.add(child.pid()));
    for (long pid : all) {
      List<String> words = new ArrayList<>(List.of(command));
      words.add(String.valueOf(pid));
      Process done = Children.start(new ProcessBuilder(words).redirectErrorStream(true));
      if (done.waitFor() != 0) {
        throw new IllegalStateException(words + " ended with " + done.exitValue());
      }
    }
  }

  /** As where its computer loses power: no connection is ended in order, nothing is finished. */
  public void kill() throws Exception {
    Process running = process;
    if (running != null) {
      List<ProcessHandle> all = new ArrayList<>(running.descendants().toList());
      running.destroyForcibly();
      all.forEach(ProcessHandle::destroyForcibly);
      for (ProcessHandle each : all) {
        Await.until(() -> !each.isAlive());
      }
      Await.end(running);
    }
  }

  /** At once, in order; may be started again. */
  public void stop() throws IOException {
    Process running = process;
    if (running != null && running.isAlive()) {
      run("pg_ctl", "stop", "-w", "-m", "immediate", "-D", data().toString());
    }
  }

  /** Makes a standby the primary. */
  public void promote() throws IOException {
    run("pg_ctl", "promote", "-w", "-D", data().toString());
  }

  /** Runs one of PostgreSQL's programs as its user; what it wrote. */
  public String run(String... command) throws IOException {
    return PostgresPrograms.run(folder, command);
  }

  /** Makes an empty database; its name. */
  public String database() {
    return database("template1");
  }

  /** Makes a copy of a database that nobody is connected to; its name. */
  public String database(String template) {
    String name = "test_" + DATABASES.incrementAndGet();
    execute(SUPERUSER, "CREATE DATABASE " + name + " TEMPLATE " + template);
    return name;
  }

  /** Runs statements as the superuser in a database. */
  public void execute(String database, String sql) {
    try (Connection connection = connect(database);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IllegalStateException(sql, e);
    }
  }

  /** As the superuser. */
  public Connection connect(String database) throws SQLException {
    return DriverManager.getConnection(url(database), SUPERUSER, "");
  }

  /** Without user and password. */
  public String url(String database) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
  }

  public int port() {
    return port;
  }

  public Path data() {
    return folder.resolve("data");
  }

  /** What the server says. */
  public Path log() {
    return folder.resolve("log");
  }

  @Override
  public void close() {
    try {
      stop();
      Directories.delete(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
