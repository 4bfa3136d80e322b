package org.chordlog.store.postgres;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.PlantAddress;
import org.jspecify.annotations.Nullable;

/** An empty plant in a database of its own, with the rights of its owner. */
record TestPlant(String database, PlantAddress address, HikariDataSource pool) {
  private static @Nullable TestPlant shared;

  static synchronized TestPlant shared() {
    TestPlant open = shared == null ? fresh() : shared;
    shared = open;
    return open;
  }

  static TestPlant fresh() {
    PostgresServer server = PostgresServer.shared();
    String database = server.database();
    PlantAddress address =
        PlantAddress.of(server.url(database), PostgresServer.SUPERUSER, () -> "", null);
    try (Connection connection = PlantConnections.open(address, "chordlog test")) {
      PlantSchema.migrate(connection);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    return new TestPlant(database, address, PlantPool.open(address, 8));
  }

  /** A new edge of the shared plant; its id. */
  static String edge(Path name) {
    String id = UUID.randomUUID().toString();
    PostgresServer.shared()
        .execute(
            shared().database(),
            "INSERT INTO plant.edge (edge_id, name) VALUES ('%s', '%s')".formatted(id, name));
    return id;
  }
}
