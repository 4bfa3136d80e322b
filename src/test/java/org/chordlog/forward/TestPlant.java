package org.chordlog.forward;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.postgres.PlantConnections;

/** The layout of a plant with the login of one workshop computer, to be copied by each test. */
public final class TestPlant {
  public static final String EDGE = "edge A";
  static final String USER = "chordlog_edge_a";
  static final String PASSWORD = "an invented secret";

  private TestPlant() {}

  /** A database to make others of. */
  public static String create(PostgresServer server) {
    String database = server.database();
    server.execute(database, script());
    server.execute(
        database,
        "INSERT INTO plant.version VALUES (1, plant.now_micros());"
            + "INSERT INTO plant.login (name, edge_name, site) VALUES ('"
            + USER
            + "', '"
            + EDGE
            + "', 'north');"
            + "DO $$ BEGIN IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = '"
            + USER
            + "') THEN CREATE ROLE "
            + USER
            + " LOGIN PASSWORD '"
            + PASSWORD
            + "' IN ROLE chordlog_edge; END IF; END $$");
    return database;
  }

  private static String script() {
    try (InputStream in = PlantConnections.class.getResourceAsStream("plant-1.sql")) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
