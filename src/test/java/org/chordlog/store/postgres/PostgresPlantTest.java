package org.chordlog.store.postgres;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Kept;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.RequestKey;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.ReadingSearch;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Where;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A plant as its own login for looking sees it. */
@Tag("slow")
final class PostgresPlantTest {
  private static final String PASSWORD = "an invented password";
  private final TestPlant test = TestPlant.fresh();
  private final String a = UUID.randomUUID().toString();
  private Plant plant;

  @BeforeEach
  void open() {
    String login =
        new PostgresPlantAdmin(test.address()).addReader("p " + a.substring(0, 8), PASSWORD);
    execute(
        "INSERT INTO plant.edge (edge_id, name, site) VALUES ('%s', 'A', 'Hall 2')".formatted(a));
    execute(
        "INSERT INTO plant.edge (edge_id, name, site) VALUES (gen_random_uuid(), 'B', 'Hall 1')");
    plant =
        PostgresPlant.open(
            new PlantAddress(test.address().hosts(), test.database(), login, () -> PASSWORD, null));
  }

  @AfterEach
  void close() {
    plant.close();
    test.pool().close();
  }

  private void execute(String sql) {
    PostgresServer.shared().execute(test.database(), sql);
  }

  private Plant.Edge edge() {
    return plant.edge(a).orElseThrow();
  }

  private void batch(int incarnation, int number, long lastReading) {
    execute(
        "INSERT INTO plant.batch SELECT '%s', %d, %d, %d, 4, 0, 7, repeat('ab', 32), 9, 1,"
                .formatted(a, incarnation, number, lastReading)
            + " plant.now_micros(), plant.now_micros()");
  }

  @Test
  void edgesComeBySiteAndNameWithWhatTheyDelivered() {
    assertEquals(List.of("B", "A"), plant.edges().stream().map(Plant.Edge::name).toList());
    assertEquals(Plant.State.NEW, edge().state());
    batch(1, 1, 100);
    batch(1, 2, 250);
    assertEquals(Plant.State.COMPLETE, edge().state());
    assertEquals(250, Objects.requireNonNull(edge().delivered()).lastReadingId());
    execute("UPDATE plant.edge SET backlog_rows = 3 WHERE name = 'A'");
    assertEquals(Plant.State.BEHIND, edge().state());
    execute("UPDATE plant.batch SET received_micros = received_micros - 301000000");
    assertEquals(Plant.State.SILENT, edge().state());
    execute("UPDATE plant.edge SET seen_micros = plant.now_micros() WHERE name = 'A'");
    assertEquals(Plant.State.BEHIND, edge().state());
    assertEquals("ab".repeat(32), plant.store(a).seal().hash());
  }

  @Test
  void aWorkshopComputerThatNeverSpokeIsListedAsNew() {
    String name = "never " + a.substring(0, 8);
    new PostgresPlantAdmin(test.address()).addEdge(name, "Hall 3", PASSWORD);
    Plant.Edge added = plant.edges().get(2);
    assertEquals(name, added.name());
    assertEquals(Plant.State.NEW, added.state());
    assertEquals(0, plant.store(added.id()).readings().lastId());
    execute("UPDATE plant.login SET edge_id = '%s'".formatted(a));
    assertEquals(List.of("B", "A"), plant.edges().stream().map(Plant.Edge::name).toList());
  }

  @Test
  void formerHistoriesAreToldAndShownUpToTheirEnd() {
    Store edge = PostgresStore.written(test.pool(), a);
    var first = Kept.first(edge);
    for (int i = 1; i <= 5; i++) {
      edge.readings().append(Some.reading("A", i, first.jobId(), first.setUpId())).join();
    }
    String before = plant.store(a).epoch();
    execute("INSERT INTO plant.branch VALUES ('%s', 1, 0, 5, 'first delivery')".formatted(a));
    execute("INSERT INTO plant.branch VALUES ('%s', 2, 3, 9, 'restored')".formatted(a));
    execute("UPDATE plant.edge SET incarnation = 2 WHERE name = 'A'");
    assertEquals(List.of(new Plant.Branch(1, 3, 9, "restored")), edge().formerly());
    assertEquals(
        List.of(1L, 2L, 3L),
        plant.store(a).readings().all(0, 10).stream().map(each -> each.id()).toList());
    assertEquals(3, plant.store(a).readings().lastId());
    assertEquals(List.of(), plant.store(a).jobs().list(Long.MAX_VALUE, 9), "facts come anew");
    assertTrue(!before.equals(plant.store(a).epoch()));
  }

  @Test
  void nothingOfAnEdgeIsChangedButTheCheckpoints() {
    Store store = plant.store(a);
    assertSame(store, plant.store(a));
    assertEquals(a, store.identity());
    BadInput e = assertThrows(BadInput.class, () -> store.jobs().add(Some.job("J", "M"), "me"));
    assertTrue(e.toString().contains("on the workshop computer 'A' itself"), e::toString);
    store.checkpoints().put(new Checkpoints.Slot("job 1", 0, 5), new byte[] {7});
    assertEquals(7, store.checkpoints().find(new Checkpoints.Slot("job 1", 0, 5)).orElseThrow()[0]);
    assertThrows(BadInput.class, () -> plant.store(UUID.randomUUID().toString()));
    assertThrows(BadInput.class, () -> plant.store("none"));
  }

  @Test
  void whatIsThePlantsOwnIsWrittenAndSeenThereAlone() {
    Change kept = plant.own().changes().add(new Change(0, 5, "me", "people", "1", "2", "why"));
    assertEquals(List.of(kept), plant.own().changes().list(Long.MAX_VALUE, 9));
    assertEquals(List.of(), plant.store(a).changes().list(Long.MAX_VALUE, 9));
  }

  @Test
  void aRequestWaitsForTheEdgesAnswer() {
    Recorded by = new Recorded(5, "Ann");
    Plant.Request asked = plant.ask(a, Plant.RequestKind.ACKNOWLEDGE_ALERT, "{\"alertId\":3}", by);
    assertEquals(List.of(asked), plant.requests(a, Long.MAX_VALUE, 9));
    execute("UPDATE plant.request SET answered_micros = 9, answer = 'it is over'");
    assertEquals(
        new Plant.Answer(9, "it is over"), plant.requests(a, Long.MAX_VALUE, 9).get(0).answer());
    assertThrows(
        BadInput.class, () -> plant.ask("none", Plant.RequestKind.LOGBOOK_ENTRY, "{}", by));
  }

  /** So that a plant that is started anew does not leave it for the edge a second time. */
  @Test
  void whatIsAskedUnderAKeyIsKnownByIt() {
    RequestKey key = new RequestKey("key of a plant", "a request");
    Recorded by = new Recorded(5, "Ann");
    var unused =
        RequestKey.during(
            key, () -> plant.ask(a, Plant.RequestKind.ACKNOWLEDGE_ALERT, "{\"alertId\":4}", by));
    assertTrue(plant.own().answeredRequests().find(key.key()).isPresent());
  }

  /** What pages ask of readings looks into one of the eight parts, by an index. */
  @Test
  void aQuestionAboutOneEdgeReadsOnePart() {
    List<ReadingQuery> all =
        List.of(
            ReadingQuery.newest(3, 100),
            ReadingQuery.oldest(3, 100).at("end").after(7L),
            ReadingQuery.oldest(3, 100).decided(Decision.DOES_NOT_CONFORM),
            ReadingQuery.oldest(3, 100).excluded(false).between(1L, 2L));
    for (ReadingQuery query : all) {
      ReadingSearch search = new ReadingSearch(query);
      Where where = search.where();
      String plan = plan(search.sql(where), where.arguments(query.page().limit()));
      assertTrue(plan.contains("Subplans Removed: 7"), plan);
      assertTrue(!plan.contains("Seq Scan on reading"), plan);
    }
    assertTrue(plan("SELECT max(id) FROM reading").contains("Subplans Removed: 7"));
  }

  private String plan(String sql, Object... arguments) {
    PostgresStore store = PostgresStore.forReading(test.pool(), a);
    List<String> lines =
        store
            .database()
            .read(c -> Sql.list(c, "EXPLAIN " + sql, row -> row.getString(1), arguments));
    return String.join("\n", lines);
  }

  @Test
  void aClosedPlantRefusesEverything() {
    Store store = plant.store(a);
    plant.close();
    assertThrows(StoreException.class, () -> plant.edges());
    assertThrows(StoreException.class, () -> store.readings().lastId());
  }

  /** The server goes away and comes back; nobody opens anything again. */
  @Test
  void aServerThatWasGoneIsUsedAgain() throws Exception {
    try (PostgresServer server = PostgresServer.fresh()) {
      var address =
          PlantAddress.of(server.url(server.database()), PostgresServer.SUPERUSER, () -> "", null);
      new PostgresPlantAdmin(address).create();
      try (Plant other = PostgresPlant.open(address)) {
        assertEquals(List.of(), other.edges());
        server.kill();
        StoreException e = assertThrows(StoreException.class, other::edges);
        assertTrue(String.valueOf(e.getMessage()).contains("can't be reached"), e::getMessage);
        server.start();
        assertEquals(List.of(), other.edges());
      }
    }
  }
}
