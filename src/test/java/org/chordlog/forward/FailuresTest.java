package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.Await;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The line to the plant and its database fail in every way; afterwards every row is there once. */
@Tag("slow")
final class FailuresTest extends RelayedEdge {
  private void awaitState(ForwardState state) throws Exception {
    Await.until(() -> edge.forwarder().status().state() == state, () -> edge.forwarder().status());
  }

  private void assertSaid(String words) {
    String said = edge.forwarder().status().problem();
    assertTrue(said.contains(words), said);
  }

  /** As after a week: what gathered goes in batches, and what is new waits behind it. */
  @Test
  void theNetworkIsGoneForLong() throws Exception {
    edge.inSmallBatches();
    edge.measure(10);
    edge.start();
    arrivesEqual();
    relay.refuse(true);
    edge.measure(1_200);
    awaitState(ForwardState.WAITING);
    assertSaid("can't be reached");
    Await.until(() -> edge.forwarder().status().rest().readings() == 1_200);
    relay.refuse(false);
    edge.measure(10);
    arrivesEqual();
    assertTrue(edge.forwarder().status().counts().batches() >= 4);
    assertEquals(1_220, edge.count("plant.reading"));
    assertEquals(edge.count("SELECT sum(rows) FROM plant.batch"), edge.rowsHere());
  }

  /** Whether the batch was committed is known only by asking. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5})
  void theConnectionDiesAtACommitWhoseAnswerIsLost(int which) throws Exception {
    edge.inSmallBatches();
    edge.measure(600);
    relay.loseAnswerToCommit(which);
    edge.start();
    Await.until(() -> relay.cuts() == 1, () -> edge.forwarder().status());
    arrivesEqual();
    assertEquals(edge.count("SELECT sum(rows) FROM plant.batch"), edge.rowsHere());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 300, 2_000, 9_000, 60_000, 100_000, 130_000})
  void theConnectionIsCutAfterSoManyBytes(long bytes) throws Exception {
    edge.inSmallBatches();
    edge.measure(800);
    relay.cutAfter(bytes);
    edge.start();
    Await.until(() -> relay.cuts() == 1, () -> edge.forwarder().status());
    arrivesEqual();
    assertEquals(edge.count("SELECT sum(rows) FROM plant.batch"), edge.rowsHere());
  }

  /** No packet comes any more, and nobody says so: as where a firewall forgets a connection. */
  @Test
  void theConnectionStandsStill() throws Exception {
    edge.measure(100);
    edge.start();
    arrivesEqual();
    relay.stand(true);
    edge.measure(50);
    awaitState(ForwardState.WAITING);
    relay.stand(false);
    arrivesEqual();
  }

  @Test
  void theLineIsSlow() throws Exception {
    edge.measure(300);
    relay.slow(30_000);
    edge.start();
    arrivesEqual();
    assertTrue(Math.abs(clockAheadMillis()) < 2_000, "a slow line is no slow clock");
  }

  @Test
  void theLineIsUsedForNoMoreThanItMayBe() throws Exception {
    edge.limited(100);
    edge.measure(1_000);
    long began = System.nanoTime();
    edge.start();
    arrivesEqual();
    double seconds = (System.nanoTime() - began) / 1e9;
    assertTrue(
        relay.passed() / 1_000.0 / seconds < 130, relay.passed() + " bytes, " + seconds + " s");
  }

  @Test
  void theServerTakesNoChanges() throws Exception {
    edge.measure(100);
    server.execute(
        "postgres", "ALTER DATABASE " + database + " SET default_transaction_read_only = on");
    edge.start();
    awaitState(ForwardState.WAITING);
    assertSaid("takes no changes");
    server.execute(
        "postgres", "ALTER DATABASE " + database + " RESET default_transaction_read_only");
    arrivesEqual();
  }

  @Test
  void thePlantIsOlderThanTheEdge() throws Exception {
    edge.measure(100);
    server.execute(database, "ALTER TABLE plant.reading RENAME COLUMN pass TO passed");
    edge.start();
    awaitState(ForwardState.REFUSED);
    assertSaid("older layout than this program");
    assertSaid("update the plant first");
    server.execute(database, "ALTER TABLE plant.reading RENAME COLUMN passed TO pass");
    arrivesEqual();
  }

  /** Only additions are made to the plant's tables, so that older edges go on. */
  @Test
  void thePlantIsNewerThanTheEdge() throws Exception {
    edge.measure(100);
    server.execute(database, "ALTER TABLE plant.reading ADD COLUMN later text");
    server.execute(database, "ALTER TABLE plant.job ADD COLUMN later bigint");
    edge.start();
    arrivesEqual();
  }

  @Test
  void theClockOfTheEdgeSteps() throws Exception {
    AtomicLong aheadMillis = new AtomicLong();
    edge.clock = () -> InstantSource.system().instant().plusMillis(aheadMillis.get());
    edge.measure(100);
    edge.start();
    arrivesEqual();
    for (long step : new long[] {3_600_000, -7_200_000, 86_400_000, 0}) {
      aheadMillis.set(step);
      edge.measure(20);
      arrivesEqual();
      long ahead = clockAheadMillis();
      assertTrue(Math.abs(ahead - step) < 60_000, ahead + " ms");
    }
  }

  private long clockAheadMillis() throws Exception {
    return edge.count("SELECT clock_ahead_micros FROM plant.edge WHERE name = 'edge A'") / 1_000;
  }
}
