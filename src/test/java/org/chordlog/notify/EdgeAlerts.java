package org.chordlog.notify;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import org.chordlog.forward.EdgeRig;
import org.chordlog.forward.TestPlant;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * A plant on a real database, a workshop computer that delivered to it, and a clock put on by hand.
 */
abstract class EdgeAlerts {
  static final long MINUTE = 60_000_000L;
  static final Duration SILENT = Duration.ofMinutes(15);
  @TempDir Path folder;
  final PostgresServer server = PostgresServer.shared();
  String database;
  EdgeRig rig;
  Plant plant;
  long now;

  @BeforeEach
  void deliver() throws Exception {
    database = TestPlant.create(server);
    plant = open();
    rig = new EdgeRig(folder.resolve("edge"), TestPlant.EDGE, server.port(), server, database);
    rig.measure(3);
    delivers();
    rig.close();
    now = heard();
  }

  Plant open() {
    String url = "postgresql://127.0.0.1:" + server.port() + "/" + database;
    return Stores.openPlant(PlantAddress.of(url, PostgresServer.SUPERUSER, () -> "", null));
  }

  void delivers() throws Exception {
    rig.store();
    rig.start();
    rig.complete();
  }

  @AfterEach
  void close() {
    rig.close();
    plant.close();
  }

  AlertWatch watch(BooleanSupplier turn) {
    WatchedPlant watched = new WatchedPlant(plant, SILENT, turn);
    return new AlertWatch(watched, () -> now, AlertWatch.Times.AT_ONCE);
  }

  Plant.Edge edge() {
    return plant.edges().get(0);
  }

  long heard() {
    Plant.Delivered delivered = Objects.requireNonNull(edge().delivered());
    return Math.max(delivered.seenMicros(), delivered.receivedMicros());
  }

  void atPlant(String set) {
    server.execute(database, "UPDATE plant.edge SET " + set + " WHERE name = 'edge A'");
  }

  List<Alert> open(AlertKind kind) {
    return plant.own().alerts().open().stream().filter(each -> each.kind() == kind).toList();
  }

  Alert one(AlertKind kind) {
    List<Alert> open = open(kind);
    assertEquals(1, open.size(), open::toString);
    return open.get(0);
  }

  Recorded anna() {
    return new Recorded(now, "Anna");
  }

  List<AlertEvent.What> happened(Alert alert) {
    return plant.own().alerts().events(alert.id()).stream().map(AlertEvent::what).toList();
  }
}
