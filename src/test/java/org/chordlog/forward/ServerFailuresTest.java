package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.harness.PostgresServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plant's server dies, is restarted, is followed by its standby, or has no more room. */
@Tag("slow")
final class ServerFailuresTest {
  @TempDir Path directory;
  private PostgresServer server;
  private String database;
  private CuttingRelay relay;
  private EdgeRig edge;

  @BeforeEach
  void open() throws Exception {
    server = PostgresServer.fresh();
    database = TestPlant.create(server);
    relay = new CuttingRelay(server.port());
    edge = new EdgeRig(directory.resolve("edge"), TestPlant.EDGE, relay.port(), server, database);
  }

  @AfterEach
  void close() throws Exception {
    edge.close();
    relay.close();
    server.close();
  }

  @Test
  void theServerIsKilledInMidBatchAndStartsAgain() throws Exception {
    edge.measure(15_000);
    edge.start();
    for (int i = 1; i <= 3; i++) {
      long until = relay.passed() + 700_000L;
      Await.closely(() -> relay.passed() > until);
      server.kill();
      Await.until(() -> edge.forwarder().status().state() == ForwardState.WAITING);
      edge.measure(200);
      server.start();
    }
    edge.complete();
    edge.assertEqual();
    assertEquals(edge.count("SELECT sum(rows) FROM plant.batch"), edge.rowsHere());
  }

  /** A standby that had not heard of the newest batches: its ledger decides, not what was known. */
  @Test
  void theStandbyThatTakesOverIsBehind() throws Exception {
    edge.measure(1_000);
    edge.start();
    edge.complete();
    edge.close();
    try (PostgresServer standby = PostgresServer.standbyOf(server)) {
      String hosts =
          "postgresql://127.0.0.1:%d,127.0.0.1:%d/%s"
              .formatted(relay.port(), standby.port(), database);
      edge.start();
      edge.measure(2_000);
      edge.complete();
      edge.close();
      server.kill();
      standby.start();
      standby.promote();
      try (EdgeRig after = new EdgeRig(edge.directory, TestPlant.EDGE, hosts, standby, database)) {
        assertEquals(1_000, after.delivered().readingId());
        after.measure(10);
        after.start();
        after.complete();
        after.assertEqual();
        assertEquals(1, after.store().feed().orElseThrow().edge().incarnation());
      }
    }
  }

  @Test
  void theDiskOfTheServerIsFull() throws Exception {
    Path small = Files.createDirectories(Files.createTempDirectory("small-disk"));
    String[] mount = {
      "mount", "-t", "tmpfs", "-o", "size=18m,mode=0755", "tmpfs", small.toString()
    };
    assumeTrue(run(mount) == 0, "no right to mount a file system here");
    try {
      Path place = Files.createDirectory(small.resolve("tables"));
      run("chown", "-R", PostgresServer.SUPERUSER, small.toString());
      run("chmod", "o+rx", String.valueOf(small.getParent()));
      server.execute("postgres", "CREATE TABLESPACE small LOCATION '" + place + "'");
      server.execute("postgres", "ALTER DATABASE " + database + " SET TABLESPACE small");
      edge.measure(30_000);
      edge.start();
      Await.until(
          () -> edge.forwarder().status().state() == ForwardState.WAITING,
          () -> edge.forwarder().status());
      String said = edge.forwarder().status().problem();
      assertTrue(said.contains("disk of the plant's database is full"), said);
      edge.measure(100);
      assertEquals(0, run("mount", "-o", "remount,size=200m", small.toString()));
      edge.complete();
      edge.assertEqual();
      edge.close();
      server.stop();
    } finally {
      run("umount", small.toString());
    }
  }

  private static int run(String... command) throws Exception {
    return new ProcessBuilder(command).inheritIO().start().waitFor();
  }
}
