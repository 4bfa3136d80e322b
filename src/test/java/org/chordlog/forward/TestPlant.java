package org.chordlog.forward;

import org.chordlog.harness.PostgresServer;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;

/** The layout of a plant with the login of one workshop computer, to be copied by each test. */
public final class TestPlant {
  public static final String EDGE = "edge A";
  static final String USER = "chordlog_edge_a";
  static final String PASSWORD = "an invented secret";

  private TestPlant() {}

  /** A database to make others of. */
  public static String create(PostgresServer server) {
    String database = server.database();
    Stores.plantAdmin(
            PlantAddress.of(server.url(database), PostgresServer.SUPERUSER, () -> "", null))
        .create();
    server.execute(
        database,
        "INSERT INTO plant.login (name, edge_name, site) VALUES ('"
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
}
