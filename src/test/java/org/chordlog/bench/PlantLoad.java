package org.chordlog.bench;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Decision;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;

/**
 * How long what the pages ask of a plant takes as it grows: 200 invented edges of 20 jobs each on 4
 * machines, readings made by PostgreSQL itself. Arguments: numbers of readings, ascending.
 */
final class PlantLoad {
  private static final int EDGES = 200;
  private static final int JOBS = 20;
  private static final int MANY_JOBS = 500;
  private static final int CALLS = 40;
  private static final String PASSWORD = "an invented password";

  private final PostgresServer server =
      PostgresServer.fresh(
          "-c", "shared_buffers=1GB", "-c", "max_wal_size=8GB", "-c", "synchronous_commit=off");
  private final String database = server.database();
  private final Random random = new Random(1);
  private long perEdge;

  private PlantLoad() {}

  public static void main(String[] arguments) throws Exception {
    PlantLoad load = new PlantLoad();
    try {
      load.run(Arrays.stream(arguments).mapToLong(Long::parseLong).toArray());
    } finally {
      load.server.close();
    }
  }

  private void run(long[] sizes) throws Exception {
    PlantAddress owner =
        PlantAddress.of(server.url(database), PostgresServer.SUPERUSER, () -> "", null);
    Stores.plantAdmin(owner).create();
    String reader = Stores.plantAdmin(owner).addReader("load", PASSWORD);
    PlantAddress address = PlantAddress.of(server.url(database), reader, () -> PASSWORD, null);
    facts(owner);
    for (long size : sizes) {
      grow(size / EDGES);
      try (Plant plant = Stores.openPlant(address)) {
        measure(plant);
      }
    }
    explain();
    ofAllEdges(address);
  }

  /** What asks for all edges at once, with few jobs and with many. */
  private void ofAllEdges(PlantAddress address) {
    for (int jobs : new int[] {JOBS, MANY_JOBS}) {
      more(jobs);
      try (Plant plant = Stores.openPlant(address)) {
        timeAll(jobs, "newest jobs over all edges", plant, text(null));
        timeAll(jobs, "search over all edges", plant, text("ring 1"));
        timeAll(jobs, "search over all edges, one found", plant, text("ring 70 of edge 77"));
        timeAll(jobs, "search over all edges, none found", plant, text("in no job"));
      }
    }
  }

  private void more(int jobs) {
    server.execute(
        database,
        """
        INSERT INTO plant.job (edge_id, incarnation, id, name, part, machine, station, section,
          material_lot, measured_face, specification, plan, state, opened_micros, revision, search_text)
        SELECT e.edge_id, 1, n, 'Ring ' || n, part, 'machine ' || n %% 4, 'A', section,
          material_lot, measured_face, specification, plan, 'CLOSED', opened_micros + n, revision,
          'ring ' || n || ' of ' || e.name || ' hoop'
        FROM plant.edge e, generate_series(%d, %d) n, plant.job j
        WHERE j.edge_id = '00000000-0000-0000-0000-000000000000' AND e.edge_id <> j.edge_id
        ON CONFLICT DO NOTHING;
        """
            .formatted(1, jobs));
    server.execute(database, "VACUUM ANALYZE plant.job");
  }

  private static JobQuery.Filter text(@Nullable String text) {
    return search().containing(text).filter();
  }

  private void timeAll(int jobs, String what, Plant plant, JobQuery.Filter filter) {
    double[] millis = new double[CALLS];
    int rows = 0;
    for (int i = 0; i < CALLS; i++) {
      long start = System.nanoTime();
      rows = plant.jobs(filter, null, 50).size();
      millis[i] = (System.nanoTime() - start) / 1e6;
    }
    Arrays.sort(millis);
    say(
        "%10d jobs  %-33s median %7.2f ms, worst of %d %7.2f ms  (%d)",
        jobs * EDGES, what, millis[CALLS / 2], CALLS, millis[CALLS - 1], rows);
  }

  /** One real job and set-up by the store, then copies of them. */
  private void facts(PlantAddress owner) {
    try (Plant plant = Stores.openPlant(owner)) {
      Store own = plant.own();
      Bridge bridge = own.gauges().add(Some.bridge("200"), "me");
      own.jobs().add(Some.job("Ring", "machine 0"), "me");
      own.readings().keep(Some.setUp(bridge));
    }
    server.execute(
        database,
        """
        INSERT INTO plant.edge (edge_id, name, site)
        SELECT md5('edge ' || e)::uuid, 'edge ' || e, 'site ' || e %% 5 FROM generate_series(1, %1$d) e;
        INSERT INTO plant.set_up (edge_id, incarnation, id, body)
        SELECT md5('edge ' || e)::uuid, 1, s.id, s.body
        FROM generate_series(1, %1$d) e, plant.set_up s;
        INSERT INTO plant.job (edge_id, incarnation, id, name, part, machine, station, section,
          material_lot, measured_face, specification, plan, state, opened_micros, revision, search_text)
        SELECT md5('edge ' || e)::uuid, 1, n, 'Ring ' || n, part, 'machine ' || n %% 4, 'A', section,
          material_lot, measured_face, specification, plan, state, opened_micros + n, revision,
          'ring ' || n || ' hoop'
        FROM generate_series(1, %1$d) e, generate_series(1, %2$d) n, plant.job j
        WHERE j.edge_id = '00000000-0000-0000-0000-000000000000';
        INSERT INTO plant.specification_revision (edge_id, incarnation, job_id, revision, at_micros,
          made_by, why, specification)
        SELECT j.edge_id, 1, j.id, 1, s.at_micros, s.made_by, s.why, s.specification
        FROM plant.job j, plant.specification_revision s
        WHERE j.edge_id <> s.edge_id;
        """
            .formatted(EDGES, JOBS));
  }

  private void grow(long wanted) {
    long start = System.nanoTime();
    server.execute(
        database,
        """
        INSERT INTO plant.reading (edge_id, incarnation, id, station, station_sequence, job_id, piece,
          position, mode, value_nm, scatter_nm, sample_count, first_sample, last_sample,
          monotonic_nanos, wall_micros, depth_nm, set_up_id, radius_mm, lower_mm, upper_mm,
          curvature_per_mm, standard_uncertainty_per_mm, coverage_factor, degrees_of_freedom,
          decision, marks, clock, raw_hex, run_id, kind, pass, revision)
        SELECT md5('edge ' || e)::uuid, 1, i, 'A', i, 1 + i %% %4$d, (i + 2) / 3,
          (ARRAY['start', 'middle', 'end'])[1 + i %% 3], 'SETTLED', -9580000 - i, 1500, 12,
          i * 40, i * 40 + 12, i * 4000000017::bigint, 1790000000000000 + i * 4000000::bigint, 2760000 + i, 1,
          1800 + sin(i), 1797 + sin(i), 1803 + sin(i), 1 / (1800 + sin(i)), 3e-7, 2.05, 41.5,
          CASE WHEN i %% 37 = 0 THEN 'DOES_NOT_CONFORM' ELSE 'CONFORMS' END, '', 'STEADY',
          '2b30322e3736300d0a', 1, 'PRODUCT', 1, 1
        FROM generate_series(1, %1$d) e, generate_series(%2$d::bigint, %3$d::bigint) i;
        DELETE FROM plant.job_total;
        INSERT INTO plant.job_total SELECT edge_id, 1, job_id, count(*), min(id), max(id)
        FROM plant.reading GROUP BY edge_id, job_id;
        """
            .formatted(EDGES, perEdge + 1, wanted, JOBS));
    long added = (wanted - perEdge) * EDGES;
    perEdge = wanted;
    server.execute(database, "VACUUM ANALYZE plant.reading");
    double seconds = (System.nanoTime() - start) / 1e9;
    say("%d readings: %d added in %.0f s", perEdge * EDGES, added, seconds);
  }

  private void measure(Plant plant) {
    time("overview of edges", plant, store -> plant.edges().size());
    time("job page: 100 newest", plant, s -> page(s, ReadingQuery.newest(job(), 100)));
    time(
        "job page: 100 oldest not conforming",
        plant,
        s -> page(s, ReadingQuery.oldest(job(), 100).decided(Decision.DOES_NOT_CONFORM)));
    time("job page: one position", plant, s -> page(s, ReadingQuery.newest(job(), 100).at("end")));
    time("job: first 500 for statistics", plant, s -> s.readings().ofJob(job(), 0, 500).size());
    time("count of a job", plant, s -> s.readings().countOfJob(job()));
    time("machine page: 500 newest", plant, s -> machine(s));
    time("readings of a machine, counted", plant, s -> s.readings().countOfMachine("machine 1"));
    time("search of jobs", plant, s -> s.jobs().search(search()).size());
    time(
        "one reading",
        plant,
        s -> s.readings().find(1 + random.nextLong(perEdge)).stream().count());
    time("newest id", plant, s -> s.readings().lastId());
  }

  private long job() {
    return 1L + random.nextInt(JOBS);
  }

  private static long page(Store store, ReadingQuery query) {
    return store.readings().page(query).size();
  }

  private long machine(Store store) {
    return store.readings().ofMachine("machine 1", Math.max(0, perEdge - 2_000), 500).size();
  }

  private static JobQuery search() {
    return JobQuery.of(JobQuery.Order.NEWEST, 20).containing("ring 1");
  }

  private interface Call {
    long on(Store store);
  }

  private void time(String what, Plant plant, Call call) {
    List<Store> stores = new ArrayList<>();
    plant.edges().forEach(each -> stores.add(plant.store(each.id())));
    double[] millis = new double[CALLS];
    long rows = 0;
    for (int i = 0; i < CALLS; i++) {
      Store store = stores.get(random.nextInt(stores.size()));
      long start = System.nanoTime();
      rows = call.on(store);
      millis[i] = (System.nanoTime() - start) / 1e6;
    }
    Arrays.sort(millis);
    say(
        "%10d  %-38s median %7.2f ms, worst of %d %7.2f ms  (%d)",
        perEdge * EDGES, what, millis[CALLS / 2], CALLS, millis[CALLS - 1], rows);
  }

  private void explain() throws SQLException {
    try (Connection connection = server.connect(database);
        var statement = connection.createStatement()) {
      statement.execute("SET search_path = edge, plant");
      statement.execute("SELECT set_config('chordlog.edge', md5('edge 7')::uuid::text, false)");
      plan(
          statement,
          "SELECT * FROM reading WHERE job_id = 3 AND id < 9999999 ORDER BY id DESC LIMIT 100");
      plan(statement, "SELECT * FROM reading WHERE id = " + perEdge / 2);
      try (ResultSet size =
          statement.executeQuery(
              "SELECT pg_size_pretty(pg_database_size(current_database())),"
                  + " pg_database_size(current_database())")) {
        size.next();
        say("%s, %.0f bytes a reading", size.getString(1), size.getDouble(2) / (perEdge * EDGES));
      }
    }
  }

  private static void plan(Statement statement, String query) throws SQLException {
    try (ResultSet plan =
        statement.executeQuery("EXPLAIN (ANALYZE, BUFFERS, COSTS OFF) " + query)) {
      while (plan.next()) {
        say("%s", plan.getString(1));
      }
    }
  }

  private static void say(String form, Object... arguments) {
    System.out.println(String.format(Locale.ROOT, form, arguments));
  }
}
