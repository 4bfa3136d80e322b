package org.chordlog.forward;

import java.nio.file.Path;
import org.chordlog.harness.PostgresServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A workshop computer that delivers to a plant of its own through a relay that can fail. */
abstract class RelayedEdge {
  static PostgresServer server;
  static String empty;

  @TempDir Path directory;
  String database;
  CuttingRelay relay;
  EdgeRig edge;

  @BeforeAll
  static void plant() throws Exception {
    server = PostgresServer.shared();
    empty = TestPlant.create(server);
  }

  @BeforeEach
  void open() throws Exception {
    database = server.database(empty);
    relay = new CuttingRelay(server.port());
    edge = new EdgeRig(directory.resolve("edge"), "edge A", relay.port(), server, database);
  }

  @AfterEach
  void close() throws Exception {
    edge.close();
    relay.close();
  }

  void arrivesEqual() throws Exception {
    edge.complete();
    edge.assertEqual();
  }
}
