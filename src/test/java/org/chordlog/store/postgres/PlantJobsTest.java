package org.chordlog.store.postgres;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.util.List;
import java.util.UUID;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Kept;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Where;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Jobs of all workshop computers, as the pages' own login finds them by one statement. */
@Tag("slow")
final class PlantJobsTest {
  private static final String PASSWORD = "an invented password";
  private final TestPlant test = TestPlant.fresh();
  private final String a = UUID.randomUUID().toString();
  private final String b = UUID.randomUUID().toString();
  private PlantAddress reader;
  private Plant plant;

  @BeforeEach
  void open() {
    String login =
        new PostgresPlantAdmin(test.address()).addReader("j " + a.substring(0, 8), PASSWORD);
    for (String each : List.of(a, b)) {
      execute("INSERT INTO plant.edge (edge_id, name) VALUES ('%1$s', '%1$s')".formatted(each));
    }
    reader = new PlantAddress(test.address().hosts(), test.database(), login, () -> PASSWORD, null);
    plant = PostgresPlant.open(reader);
  }

  @AfterEach
  void close() {
    plant.close();
    test.pool().close();
  }

  private void execute(String sql) {
    PostgresServer.shared().execute(test.database(), sql);
  }

  private Store edge(String id) {
    return PostgresStore.written(test.pool(), id);
  }

  private static JobQuery.Filter any() {
    return JobQuery.of(JobQuery.Order.NEWEST, 1).filter();
  }

  private static JobQuery.Filter containing(String text) {
    return JobQuery.of(JobQuery.Order.NEWEST, 1).containing(text).filter();
  }

  private List<String> names(JobQuery.Filter filter, @Nullable String edge, int limit) {
    return plant.jobs(filter, edge, limit).stream().map(each -> each.job().name()).toList();
  }

  private void add(String edge, String name, long openedMicros) {
    Job kept = edge(edge).jobs().add(Some.job(name, "M"), "me");
    execute(
        "UPDATE plant.job SET opened_micros = %d WHERE edge_id = '%s' AND id = %d"
            .formatted(openedMicros, edge, kept.id()));
  }

  @Test
  void jobsOfAllComeByTheTimeTheyWereOpened() {
    add(a, "Ring 1", 10);
    add(b, "Ring 2", 30);
    add(a, "Arc", 20);
    assertEquals(List.of("Ring 2", "Arc", "Ring 1"), names(any(), null, 9));
    assertEquals(List.of("Ring 2", "Arc"), names(any(), null, 2));
    assertEquals(List.of("Arc", "Ring 1"), names(any(), a, 9));
    assertEquals(List.of("Ring 2", "Ring 1"), names(containing("rinG"), null, 9));
    Job arc = edge(a).jobs().search(JobQuery.of(JobQuery.Order.NAME, 1)).get(0);
    edge(a).jobs().update(arc.withState(Job.State.CLOSED), "me", "done");
    JobQuery closed = JobQuery.of(JobQuery.Order.NEWEST, 1).in(Job.State.CLOSED);
    assertEquals(List.of("Arc"), names(closed.filter(), null, 9));
  }

  @Test
  void everyCharacterOfTheTextStandsForItself() {
    add(a, "100 % round", 1);
    add(a, "100 parts", 2);
    add(b, "back\\slash", 3);
    add(b, "under_score", 4);
    add(b, "underXscore", 5);
    assertEquals(List.of("100 % round"), names(containing("0 %"), null, 9));
    assertEquals(List.of("back\\slash"), names(containing("k\\s"), null, 9));
    assertEquals(List.of("under_score"), names(containing("r_s"), null, 9));
    assertEquals(List.of(), names(containing("'; DROP"), null, 9));
  }

  /** As the store of the one computer says it. */
  @Test
  void whatBelongsToAJobComesWithIt() {
    Store store = edge(a);
    var first = Kept.first(store);
    for (int i = 2; i <= 4; i++) {
      store.readings().append(Some.reading("A", i, first.jobId(), first.setUpId())).join();
    }
    long job = first.jobId();
    store.jobs().activate("A", job);
    JobEvent lot =
        new JobEvent(
            0,
            job,
            store.jobs().find(job).orElseThrow().machine(),
            JobEvent.Kind.MATERIAL_LOT,
            first.id(),
            new JobEvent.Content(null, null, "lot 7", ""),
            new Recorded(5, "me"));
    assertTrue(store.jobs().add(lot).id() > 0);
    Plant.FoundJob found = plant.jobs(any(), a, 1).get(0);
    assertEquals(store.jobs().find(job).orElseThrow(), found.job());
    assertEquals("lot 7", found.lot());
    assertEquals(store.jobs().materialLot(job).orElse(""), found.lot());
    assertEquals(store.readings().countOfJob(job), found.readings());
    assertTrue(found.active());
  }

  @Test
  void jobsOfAFormerHistoryAreNotFound() {
    add(a, "Ring", 1);
    execute("UPDATE plant.edge SET incarnation = 2 WHERE edge_id = '%s'".formatted(a));
    assertEquals(List.of(), names(any(), null, 9));
  }

  /** So it takes no longer in a plant of many jobs. */
  @Test
  void aPageOfJobsIsFoundByAnIndex() throws Exception {
    add(a, "Ring", 1);
    execute(
        "INSERT INTO plant.job SELECT edge_id, incarnation, 10 + n, 'Ring ' || n, part, machine,"
            + " station, section, material_lot, measured_face, specification, plan, state, n,"
            + " customer, drawing_revision, NULL, NULL, 1, 'ring ' || n || ' hoop', 0"
            + " FROM plant.job, generate_series(1, 20000) n");
    execute("ANALYZE plant.job, plant.edge");
    assertPlan("job_newest", any());
    assertPlan(
        "job_newest_of_state", JobQuery.of(JobQuery.Order.NEWEST, 1).in(Job.State.CLOSED).filter());
    assertPlan("job_by_text", containing("ring 19998"));
  }

  private void assertPlan(String index, JobQuery.Filter filter) throws Exception {
    Where where = FoundJobs.where(filter, null);
    try (Connection connection = PlantConnections.open(reader, "test")) {
      String lines =
          String.join(
              "\n",
              Sql.list(
                  connection,
                  "EXPLAIN " + FoundJobs.sql(where),
                  row -> row.getString(1),
                  where.arguments(50)));
      assertTrue(lines.contains(index), lines);
    }
  }
}
