package org.chordlog.notify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.forward.EdgeRig;
import org.chordlog.forward.TestPlant;
import org.chordlog.harness.Directories;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.AlertStatement;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plant on a real database tells of a workshop computer that delivers to it. */
@Tag("slow")
final class EdgeAlertsTest {
  private static final long MINUTE = 60_000_000L;
  private static final Duration SILENT = Duration.ofMinutes(15);
  @TempDir Path folder;
  private final PostgresServer server = PostgresServer.shared();
  private String database;
  private EdgeRig rig;
  private Plant plant;
  private long now;

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

  private Plant open() {
    String url = "postgresql://127.0.0.1:" + server.port() + "/" + database;
    return Stores.openPlant(PlantAddress.of(url, PostgresServer.SUPERUSER, () -> "", null));
  }

  private void delivers() throws Exception {
    rig.store();
    rig.start();
    rig.complete();
  }

  @AfterEach
  void close() {
    rig.close();
    plant.close();
  }

  private AlertWatch watch(BooleanSupplier turn) {
    WatchedPlant watched = new WatchedPlant(plant, SILENT, turn);
    return new AlertWatch(watched, () -> now, AlertWatch.Times.AT_ONCE);
  }

  private Plant.Edge edge() {
    return plant.edges().get(0);
  }

  private long heard() {
    Plant.Delivered delivered = Objects.requireNonNull(edge().delivered());
    return Math.max(delivered.seenMicros(), delivered.receivedMicros());
  }

  private void atPlant(String set) {
    server.execute(database, "UPDATE plant.edge SET " + set + " WHERE name = 'edge A'");
  }

  private List<Alert> open(AlertKind kind) {
    return plant.own().alerts().open().stream().filter(each -> each.kind() == kind).toList();
  }

  private Alert one(AlertKind kind) {
    List<Alert> open = open(kind);
    assertEquals(1, open.size(), open::toString);
    return open.get(0);
  }

  private Recorded anna() {
    return new Recorded(now, "Anna");
  }

  private List<AlertEvent.What> happened(Alert alert) {
    return plant.own().alerts().events(alert.id()).stream().map(AlertEvent::what).toList();
  }

  @Test
  void silenceIsToldOnceByHoweverManyProgramsAndEndsWithTheNextDelivery() throws Exception {
    atPlant("backlog_rows = 12345");
    try (AlertWatch first = watch(() -> true);
        AlertWatch second = watch(() -> true)) {
      now += 14 * MINUTE;
      first.round();
      second.round();
      assertEquals(List.of(), plant.own().alerts().open());
      now += MINUTE;
      first.round();
      second.round();
      first.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      assertEquals(List.of(AlertEvent.What.RAISED), happened(silent));
      AlertStatement said = new AlertStatement(silent);
      assertEquals("Workshop computer edge A: silent", said.headline());
      assertEquals(
          "Nothing was heard from it for 15 minutes; 12,345 records were waiting then.",
          said.evidence().toString());
      delivers();
      now = heard() + MINUTE;
      first.round();
      now += MINUTE + 1;
      first.round();
      assertEquals(List.of(), open(AlertKind.EDGE_SILENT));
      assertEquals(List.of(AlertEvent.What.RAISED, AlertEvent.What.RETURNED), happened(silent));
    }
  }

  /** What the watch knows is in the database: another one goes on where the first was ended. */
  @Test
  void anAlertOutlivesTheProgramWithWhatPeopleDidToIt() {
    now += 16 * MINUTE;
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      long until = now + 60 * MINUTE;
      plant.own().alerts().add(AlertActions.shelve(silent, anna(), "closed today", until));
    }
    plant.close();
    plant = open();
    try (AlertWatch watch = watch(() -> true)) {
      now += 59 * MINUTE;
      watch.round();
      assertEquals(AlertState.SHELVED, one(AlertKind.EDGE_SILENT).state());
      now += MINUTE;
      watch.round();
      assertEquals(AlertState.UNACKNOWLEDGED, one(AlertKind.EDGE_SILENT).state());
    }
  }

  /** As where a workshop is closed for weeks: nobody is told, and it is watched again by itself. */
  @Test
  void whatIsOutOfServiceIsWatchedAgainOnceItDelivers() {
    now += 16 * MINUTE;
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      plant.own().alerts().add(AlertActions.takeOutOfService(silent, anna(), "holidays"));
      now += 10_000 * MINUTE;
      watch.round();
      assertEquals(AlertState.OUT_OF_SERVICE, one(AlertKind.EDGE_SILENT).state());
      atPlant("seen_micros = " + now);
      watch.round();
      assertEquals(List.of(), open(AlertKind.EDGE_SILENT));
      now += 15 * MINUTE;
      watch.round();
      assertTrue(one(AlertKind.EDGE_SILENT).id() > silent.id());
    }
  }

  /** Workshop computers wait up to 5 minutes before they try again. */
  @Test
  void nobodyIsCalledSilentJustAfterThePlantWasAway() {
    WatchedPlant watched = new WatchedPlant(plant, SILENT, () -> true);
    try (AlertWatch watch = new AlertWatch(watched, () -> now, AlertWatch.Times.USUAL)) {
      now += 5 * MINUTE;
      watch.round();
      now += 120 * MINUTE; // no round meanwhile: the plant did not answer
      watch.round();
      assertEquals(List.of(), plant.own().alerts().open());
      for (int i = 0; i < 5; i++) {
        now += MINUTE;
        watch.round();
      }
      assertEquals(1, open(AlertKind.EDGE_SILENT).size());
    }
  }

  @Test
  void aHistoryThatBeganAnewIsToldUntilSomebodyKnows() throws Exception {
    Path copy = folder.resolve("copy");
    copy(rig.directory(), copy);
    rig.measure(4);
    delivers();
    rig.close();
    Directories.delete(rig.directory());
    copy(copy, rig.directory());
    rig.measure(2);
    delivers();
    rig.close();
    assertEquals(2, edge().incarnation());
    now = heard();
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      now += 5 * MINUTE;
      watch.round();
      Alert anew = one(AlertKind.EDGE_BEGAN_ANEW);
      assertEquals(AlertState.UNACKNOWLEDGED, anew.state());
      String said = new AlertStatement(anew).evidence().toString();
      assertTrue(said.startsWith("The database is not the one that was delivered before"), said);
      assertTrue(said.endsWith("of the former history stay at the plant."), said);
      plant.own().alerts().add(AlertActions.acknowledge(anew, anna(), "a copy, ended"));
      watch.round();
      assertEquals(List.of(), open(AlertKind.EDGE_BEGAN_ANEW));
    }
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      assertEquals(List.of(), open(AlertKind.EDGE_BEGAN_ANEW));
    }
  }

  private static void copy(Path from, Path to) throws Exception {
    Files.createDirectories(to);
    try (Stream<Path> files = Files.list(from)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        Files.copy(each, to.resolve(each.getFileName().toString()));
      }
    }
  }

  @Test
  void aClockThatIsWrongAndAnotherVersionAreToldAndEnd() {
    atPlant("clock_ahead_micros = -180000000, schema_version = " + (Plant.LAYOUT + 1));
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      assertEquals(List.of(), open(AlertKind.EDGE_CLOCK_WRONG));
      now += 2 * MINUTE;
      watch.round();
      assertEquals(
          "Its clock is 3 minutes behind the plant's.",
          new AlertStatement(one(AlertKind.EDGE_CLOCK_WRONG)).evidence().toString());
      String version =
          new AlertStatement(one(AlertKind.EDGE_VERSION_DIFFERS)).evidence().toString();
      assertTrue(version.endsWith("until it is updated."), version);
      atPlant("clock_ahead_micros = 0, schema_version = " + Plant.LAYOUT);
      watch.round();
      now += 10 * MINUTE;
      watch.round();
      assertEquals(List.of(), plant.own().alerts().open());
    }
  }

  /** As when its program ends; the test closes it once more. */
  private static void end(Plant.Turn turn) {
    turn.close();
  }

  @Test
  void programsOnOnePlantTakeTurns() throws Exception {
    now += 16 * MINUTE;
    try (Plant other = open();
        Plant.Turn first = plant.turn("alerts");
        Plant.Turn second = other.turn("alerts")) {
      assertTrue(first.mine());
      assertFalse(second.mine());
      try (AlertWatch watch = watch(second::mine)) {
        watch.round();
        assertEquals(List.of(), plant.own().alerts().open());
        server.execute(
            database,
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
                + " WHERE application_name = 'chordlog turn alerts' AND pid IN"
                + " (SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND granted)"
                + " AND datname = current_database()");
        Await.until(second::mine);
        watch.round();
        assertEquals(1, open(AlertKind.EDGE_SILENT).size());
        assertFalse(first.mine());
      }
      end(second);
      Await.until(first::mine);
    }
  }

  @Test
  void whoNeverDeliveredIsNotCalledSilent() {
    server.execute(
        database,
        "INSERT INTO plant.login (name, edge_name, site) VALUES ('nobody_yet', 'cellar', 'north')");
    try (AlertWatch watch = watch(() -> true)) {
      now += 60 * MINUTE;
      watch.round();
      assertEquals(
          List.of(AlertKey.edge(AlertKind.EDGE_SILENT, TestPlant.EDGE)),
          plant.own().alerts().open().stream().map(Alert::key).toList());
    }
  }
}
