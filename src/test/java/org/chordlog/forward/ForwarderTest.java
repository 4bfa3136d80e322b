package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Change;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.FeedPage;
import org.chordlog.store.PieceMove;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Delivery to a real PostgreSQL while nothing fails. */
@Tag("slow")
final class ForwarderTest {
  private static PostgresServer server;
  private static String empty;

  @TempDir Path directory;
  private EdgeRig edge;

  @BeforeAll
  static void plant() throws Exception {
    server = PostgresServer.shared();
    empty = TestPlant.create(server);
  }

  @BeforeEach
  void open() {
    edge = new EdgeRig(directory, "edge A", server.port(), server, server.database(empty));
  }

  @AfterEach
  void close() {
    edge.close();
  }

  @Test
  void everythingThatIsThereAndThatFollowsArrives() throws Exception {
    edge.measure(500);
    edge.store().readings().add(Some.exclusion(7, true));
    edge.start();
    edge.complete();
    edge.assertEqual();
    edge.measure(300);
    Job job = edge.store().jobs().find(1).orElseThrow();
    edge.store().jobs().update(job.withState(Job.State.CLOSED), "me", "done");
    edge.store().jobs().activate("A", job.id());
    edge.complete();
    edge.assertEqual();
    ForwardStatus status = edge.forwarder().status();
    assertEquals(FeedPage.Rest.NONE, status.rest());
    assertEquals("", status.problem());
    assertEquals(1, status.counts().connections());
    assertTrue(status.lastDeliveredMicros() > 0);
  }

  /** Readings that were moved to another job arrive with their exclusions and notes. */
  @Test
  void whatWasMovedToAnotherJobArrives() throws Exception {
    edge.measure(30);
    edge.start();
    edge.complete();
    Store store = edge.store();
    Reading from = store.readings().find(30).orElseThrow();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    Reading there =
        new Reading(
            0,
            from.source(),
            new Reading.Place(other.id(), 1, from.position()),
            from.measured(),
            from.result(),
            from.circumstances());
    Exclusion here = new Exclusion(0, 30, true, Exclusion.belongsTo("K", 1), Some.T0, "me");
    String out = "Rolled again after pass 1";
    var unused = store.readings().add(new Exclusion(0, 30, true, out, Some.T0, "me"));
    long sequence = store.readings().lastSequence(from.station());
    PieceMove move =
        new PieceMove(
            List.of(new PieceMove.Moved(from, there, here, out)),
            List.of(),
            List.of(),
            new Change(0, Some.T0, "me", "pieces of job 1", "piece 10", "piece 1", "moved"));
    List<Reading> kept = store.readings().move(move.numberedFrom(sequence + 1)).join();
    edge.complete();
    edge.assertEqual();
    assertEquals(
        1, edge.count("SELECT count(*) FROM plant.reading WHERE id = " + kept.get(0).id()));
  }

  /** The plant hears of what is wrong with the records here, though it is all delivered. */
  @Test
  void aDamagedRecordIsToldToThePlant() throws Exception {
    edge.measure(10);
    edge.start();
    edge.complete();
    assertEquals(0, edge.count("SELECT count(*) FROM plant.edge WHERE trouble <> ''"));
    damage("UPDATE job SET section = '{}' WHERE id = 1");
    assertEquals(List.of(), edge.store().jobs().list(Long.MAX_VALUE, 5));
    Await.until(
        () -> edge.count("SELECT count(*) FROM plant.edge WHERE trouble LIKE '%job 1%'") == 1);
  }

  private void damage(String sql) throws Exception {
    try (Connection other =
            DriverManager.getConnection("jdbc:sqlite:" + directory.resolve("chordlog.db"));
        Statement statement = other.createStatement()) {
      statement.execute(sql);
    }
  }

  @Test
  void afterAStartItGoesOnWhereItWas() throws Exception {
    edge.measure(100);
    edge.start();
    edge.complete();
    edge.close();
    edge.measure(20);
    edge.start();
    edge.complete();
    edge.assertEqual();
    assertTrue(edge.forwarder().status().counts().rows() < 30);
  }

  @Test
  void withoutThePlantItSaysHowMuchWaits() throws Exception {
    edge.measure(100);
    edge.start();
    edge.complete();
    edge.close();
    EdgeRig alone = new EdgeRig(directory, "edge A", 1, server, "none");
    try (alone) {
      alone.measure(30);
      alone.start();
      Await.until(
          () -> alone.forwarder().status().state() == ForwardState.WAITING,
          () -> alone.forwarder().status());
      ForwardStatus status = alone.forwarder().status();
      assertEquals(30, status.rest().readings());
      assertTrue(status.problem().contains("can't be reached"), status.problem());
      assertTrue(status.lastDeliveredMicros() > 0);
    }
  }
}
