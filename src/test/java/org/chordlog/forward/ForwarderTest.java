package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Job;
import org.chordlog.store.FeedPage;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Delivery to a real PostgreSQL while nothing fails. */
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
      org.chordlog.Await.until(
          () -> alone.forwarder().status().state() == ForwardState.WAITING,
          () -> alone.forwarder().status());
      ForwardStatus status = alone.forwarder().status();
      assertEquals(30, status.rest().readings());
      assertTrue(status.problem().contains("can't be reached"), status.problem());
      assertTrue(status.lastDeliveredMicros() > 0);
    }
  }
}
