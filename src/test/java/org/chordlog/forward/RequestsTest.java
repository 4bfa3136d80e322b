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
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Plant;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people at the plant ask of an edge is done there, once, and answered. */
@Tag("slow")
final class RequestsTest {
  private static PostgresServer server;
  private static String empty;

  @TempDir Path directory;
  private String database;
  private EdgeRig edge;
  private Alert alert;

  @BeforeAll
  static void plant() {
    server = PostgresServer.shared();
    empty = TestPlant.create(server);
  }

  @BeforeEach
  void open() throws Exception {
    database = server.database(empty);
    edge = new EdgeRig(directory, TestPlant.EDGE, server.port(), server, database);
    AlertKey key = AlertKey.station(AlertKind.LINK_LOST, "A");
    alert = edge.store().alerts().add(Some.raised(key, Some.T0)).alert();
    edge.start();
    edge.complete();
  }

  @AfterEach
  void close() {
    edge.close();
  }

  private void ask(Plant.RequestKind kind, String body) {
    server.execute(
        database,
        "INSERT INTO plant.request (edge_id, kind, body, made_micros, made_by) VALUES ('%s', '%s', '%s', %d, 'Ada')"
            .formatted(edge.store().identity(), kind, body, Some.T0));
  }

  private void answered(int count) throws Exception {
    Await.until(
        () ->
            edge.count("SELECT count(*) FROM plant.request WHERE answered_micros IS NOT NULL")
                == count);
  }

  private long refused() throws Exception {
    return edge.count("SELECT count(*) FROM plant.request WHERE answer <> ''");
  }

  @Test
  void anAlertIsAcknowledgedAndThePlantSeesIt() throws Exception {
    ask(
        Plant.RequestKind.ACKNOWLEDGE_ALERT,
        "{\"alertId\":%d,\"word\":\"on my way\"}".formatted(alert.id()));
    answered(1);
    assertEquals(0, refused());
    Alert now = edge.store().alerts().find(alert.id()).orElseThrow();
    assertEquals(AlertState.ACKNOWLEDGED, now.state());
    edge.complete();
    edge.assertEqual();
    assertEquals(
        1,
        edge.count(
            "SELECT count(*) FROM plant.alert_event WHERE made_by = 'Ada' AND note = 'on my way'"));
  }

  /** As while another program holds the database: what is committed goes on to the plant. */
  @Test
  void aStoreThatTakesNoChangesHoldsUpRequestsOnly() throws Exception {
    edge.forwarder().close();
    edge.inSmallBatches();
    edge.measure(1_000);
    ask(Plant.RequestKind.LOGBOOK_ENTRY, work("OTHER"));
    try (Connection other =
            DriverManager.getConnection("jdbc:sqlite:" + directory.resolve("chordlog.db"));
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      edge.start();
      Await.until(() -> edge.count("SELECT count(*) FROM plant.reading") == 1_000);
      Await.until(() -> edge.forwarder().status().state() == ForwardState.COMPLETE);
      assertEquals(1, edge.forwarder().status().counts().connections());
      answered(0);
      statement.execute("ROLLBACK");
    }
    answered(1);
    assertEquals(0, refused());
    assertEquals(1, edge.forwarder().status().counts().connections());
  }

  @Test
  void theAnswerThatWasLostDoesNotMakeItTwice() throws Exception {
    ask(
        Plant.RequestKind.ACKNOWLEDGE_ALERT,
        "{\"alertId\":%d,\"word\":\"\"}".formatted(alert.id()));
    ask(Plant.RequestKind.LOGBOOK_ENTRY, work("OTHER"));
    answered(2);
    server.execute(database, "UPDATE plant.request SET answered_micros = NULL, answer = NULL");
    answered(2);
    assertEquals(0, refused());
    assertEquals(2, edge.store().alerts().events(alert.id()).size());
    List<Logbooks.Listed> book = edge.store().logbooks().ofMachine("M", Long.MAX_VALUE, 10);
    assertEquals(1, book.size());
    LogbookEntry entry = book.get(0).entry();
    assertEquals("greased the bearings", entry.work().note());
    assertEquals(new Recorded(Some.T0, "Ada"), entry.recorded());
  }

  private static String work(String kind) {
    return "{\"machine\":\"M\",\"kind\":\"%s\",\"roller\":\"\",\"before\":\"\",\"after\":\"\",\"note\":\"greased the bearings\",\"doneMicros\":%d,\"doneBy\":\"Bo\"}"
        .formatted(kind, Some.T0);
  }

  @Test
  void whatCannotBeDoneIsRefusedInASentence() throws Exception {
    ask(Plant.RequestKind.ACKNOWLEDGE_ALERT, "{\"alertId\":999,\"word\":\"\"}");
    ask(Plant.RequestKind.LOGBOOK_ENTRY, work("PAINTED"));
    ask(
        Plant.RequestKind.SHELVE_ALERT,
        "{\"alertId\":%d,\"reason\":\"\",\"untilMicros\":1}".formatted(alert.id()));
    answered(3);
    assertEquals(3, refused());
    assertTrue(
        edge.count("SELECT count(*) FROM plant.request WHERE answer LIKE '%does not exist here%'")
            == 1);
    assertEquals(1, edge.store().alerts().events(alert.id()).size());
  }
}
