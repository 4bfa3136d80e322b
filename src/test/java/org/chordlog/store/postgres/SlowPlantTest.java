package org.chordlog.store.postgres;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.chordlog.Await;
import org.chordlog.forward.CuttingRelay;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Pages of a plant whose database answers late or not at all: each says so, and goes on later. */
@Tag("slow")
final class SlowPlantTest {
  private static final PlantConnections.Limits SHORT = new PlantConnections.Limits(1, 2);
  private static final PlantConnections.Limits LONG = new PlantConnections.Limits(60, 60);
  private static final String LATE = "the plant's database did not answer in time";

  private final TestPlant test = TestPlant.fresh();
  private CuttingRelay relay;
  private PlantAddress address;

  @BeforeEach
  void open() throws Exception {
    relay = new CuttingRelay(PostgresServer.shared().port());
    address =
        PlantAddress.of(
            "postgresql://127.0.0.1:" + relay.port() + "/" + test.database(),
            PostgresServer.SUPERUSER,
            () -> "",
            null);
  }

  @AfterEach
  void close() throws Exception {
    relay.close();
    test.pool().close();
  }

  private static void assertSaid(String words, PostgresPlant plant) {
    assertEquals(words, assertThrows(StoreException.class, plant::edges).getMessage());
  }

  private Connection lockedEdges() throws SQLException {
    Connection other = PostgresServer.shared().connect(test.database());
    other.setAutoCommit(false);
    other.createStatement().execute("LOCK TABLE plant.edge IN ACCESS EXCLUSIVE MODE");
    return other;
  }

  @Test
  void aStatementThatTakesTooLongIsGivenUp() throws Exception {
    try (PostgresPlant plant = PostgresPlant.open(address, SHORT)) {
      try (Connection other = lockedEdges()) {
        assertSaid(LATE, plant);
        other.rollback();
      }
      assertEquals(List.of(), plant.edges());
    }
  }

  /** As where a firewall forgets the connection in the middle of an answer. */
  @Test
  void aConnectionOfWhichNothingIsHeardIsGivenUp() throws Exception {
    try (PostgresPlant plant = PostgresPlant.open(address, new PlantConnections.Limits(60, 2))) {
      assertEquals(List.of(), plant.edges());
      relay.stand(true);
      assertThrows(StoreException.class, plant::edges);
      relay.stand(false);
      Await.until(() -> answers(plant));
    }
  }

  private static boolean answers(PostgresPlant plant) {
    try {
      return plant.edges().isEmpty();
    } catch (StoreException e) {
      return false;
    }
  }

  /** Who comes when all connections wait is told within the 3 s that a page waits for one. */
  @Test
  void whereEveryConnectionWaitsTheNextOneIsTold() throws Exception {
    ExecutorService pages = Executors.newCachedThreadPool();
    try (PostgresPlant plant = PostgresPlant.open(address, LONG);
        Connection other = lockedEdges()) {
      List<CompletableFuture<?>> waiting = new ArrayList<>();
      for (int i = 0; i < PostgresPlant.CONNECTIONS; i++) {
        waiting.add(CompletableFuture.supplyAsync(plant::edges, pages));
      }
      Await.until(() -> lockWaits(other) == PostgresPlant.CONNECTIONS);
      assertSaid(
          "the plant's database is too slow: no connection to it was free within 3 s", plant);
      other.rollback();
      waiting.forEach(CompletableFuture::join);
      assertEquals(List.of(), plant.edges());
    } finally {
      pages.shutdownNow();
    }
  }

  private static long lockWaits(Connection connection) throws SQLException {
    try (var row =
        connection
            .createStatement()
            .executeQuery(
                "SELECT count(*) FROM pg_locks l JOIN pg_database d ON d.oid = l.database WHERE"
                    + " NOT granted AND d.datname = current_database()")) {
      row.next();
      return row.getLong(1);
    }
  }
}
