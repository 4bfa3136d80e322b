package org.chordlog.notify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.harness.Directories;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.store.Plant;
import org.chordlog.verdict.AlertStatement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a workshop computer delivers may show that something is wrong there. */
@Tag("slow")
final class EdgeTroubleAlertsTest extends EdgeAlerts {
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
}
