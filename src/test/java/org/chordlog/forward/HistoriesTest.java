package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.store.Some;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Copied, restored and older databases are told from each other; nothing is overwritten. */
@Tag("slow")
final class HistoriesTest extends RelayedEdge {
  @Test
  void twoComputersWithTheSameDatabaseAtTheSameTime() throws Exception {
    edge.measure(100);
    edge.close();
    Path copied = copy("copied");
    edge.start();
    arrivesEqual();
    try (EdgeRig other = new EdgeRig(copied, "edge A", relay.port(), server, database)) {
      other.measure(5);
      other.start();
      Await.until(() -> other.forwarder().status().state() == ForwardState.REFUSED);
      String said = other.forwarder().status().problem();
      assertTrue(said.contains("another connection delivers for this database"), said);
      edge.measure(10);
      arrivesEqual();
    }
  }

  /** All files, of a service that does not run. */
  private Path copy(String name) throws Exception {
    Path to = Files.createDirectories(directory.resolve(name));
    try (var files = Files.list(edge.directory)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        Files.copy(each, to.resolve(each.getFileName()));
      }
    }
    return to;
  }

  /** Each goes on in turn: both histories are there, and neither is overwritten. */
  @Test
  void twoComputersWithTheSameDatabaseOneAfterTheOther() throws Exception {
    edge.measure(100);
    edge.start();
    arrivesEqual();
    edge.close();
    Path copied = copy("copied");
    edge.measure(30);
    edge.start();
    arrivesEqual();
    edge.close();
    try (EdgeRig other = new EdgeRig(copied, "edge A", relay.port(), server, database)) {
      other.measure(5);
      other.start();
      other.complete();
      other.assertEqual();
      assertEquals(2, other.store().feed().orElseThrow().edge().incarnation());
      assertEquals(135, other.count("plant.reading"));
      assertTold(other, "both agree up to reading 100; 30 later readings");
    }
    edge.measure(1);
    edge.start();
    arrivesEqual();
    assertEquals(3, edge.store().feed().orElseThrow().edge().incarnation());
    assertEquals(166, edge.count("plant.reading"));
  }

  private static void assertTold(EdgeRig edge, String words) {
    String why = edge.store().changes().about(Histories.WHAT).get(0).why();
    assertTrue(why.contains(words), why);
  }

  @Test
  void theEdgeIsRestoredFromABackupByCommand() throws Exception {
    edge.measure(100);
    edge.start();
    arrivesEqual();
    Path backup = directory.resolve("backup.db");
    Stores.files(edge.directory).backup(backup);
    edge.close();
    edge.measure(40);
    edge.start();
    arrivesEqual();
    edge.close();
    Stores.files(edge.directory).restore(backup);
    edge.measure(25);
    edge.store().readings().add(Some.exclusion(110, true));
    edge.start();
    arrivesEqual();
    assertTold(edge, "a backup was restored; both agree up to reading 100; 40 later readings");
    assertEquals(165, edge.count("plant.reading"));
    edge.measure(5);
    arrivesEqual();
  }

  @Test
  void anOlderFileIsPutBackByHand() throws Exception {
    edge.measure(100);
    edge.start();
    arrivesEqual();
    edge.close();
    Path old = copy("old");
    edge.measure(40);
    edge.start();
    arrivesEqual();
    edge.close();
    try (EdgeRig back = new EdgeRig(old, "edge A", relay.port(), server, database)) {
      back.measure(60);
      back.start();
      back.complete();
      back.assertEqual();
      assertTold(
          back, "an older file, or a copy, was put in its place; both agree up to reading 100");
      assertEquals(200, back.count("plant.reading"));
    }
  }

  /** Nothing sealed differs, yet the histories do. */
  @Test
  void anOlderFileWithOnlyAnotherStartOfTheServiceIsRecognised() throws Exception {
    edge.measure(10);
    edge.close();
    Path old = copy("old");
    edge.start();
    arrivesEqual();
    edge.close();
    try (EdgeRig back = new EdgeRig(old, "edge A", relay.port(), server, database)) {
      back.start();
      back.complete();
      back.assertEqual();
      assertEquals(2, back.store().feed().orElseThrow().edge().incarnation());
    }
  }
}
