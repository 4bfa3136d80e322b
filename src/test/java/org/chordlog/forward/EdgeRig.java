package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.concurrent.CompletableFuture;
import java.util.random.RandomGenerator;
import org.chordlog.Await;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.Reading;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.Kept;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;

/** A data directory with its service's store and forwarder, and the plant that it delivers to. */
public final class EdgeRig implements AutoCloseable {
  /** Waits of up to 50 ms. */
  public static final RandomGenerator HURRIED =
      new RandomGenerator() {
        @Override
        public long nextLong() {
          return 0;
        }

        @Override
        public long nextLong(long bound) {
          return Math.min(bound - 1, 50_000_000L);
        }
      };

  private static final int UNDER_WAY = 2_000;

  final Path directory;
  private final String name;
  private final String url;
  private final @Nullable PostgresServer server;
  private final String database;
  InstantSource clock = InstantSource.system();
  private BatchSize batches = BatchSize.of(0);
  private @Nullable Store store;
  private @Nullable Forwarder forwarder;
  private @Nullable Reading like;

  public EdgeRig(
      Path directory, String name, int port, @Nullable PostgresServer server, String database) {
    this(directory, name, "postgresql://127.0.0.1:" + port + "/" + database, server, database);
  }

  EdgeRig(
      Path directory, String name, String url, @Nullable PostgresServer server, String database) {
    this.directory = directory;
    this.name = name;
    this.url = url;
    this.server = server;
    this.database = database;
  }

  /** Of the line, as {@code kilobytesASecond}; before {@link #start}. */
  public EdgeRig limited(int kilobytes) {
    batches = BatchSize.of(kilobytes);
    return this;
  }

  /** A tenth of the usual, so that a tenth of the readings makes as many; before {@link #start}. */
  void inSmallBatches() {
    batches = new BatchSize(500, 200_000, 0);
  }

  private PostgresServer server() {
    return Objects.requireNonNull(server);
  }

  public Path directory() {
    return directory;
  }

  public Store store() {
    Store open = store;
    if (open == null) {
      open = Stores.open(directory, Some.KEEPING_ALL);
      store = open;
    }
    return open;
  }

  public Forwarder forwarder() {
    return Objects.requireNonNull(forwarder);
  }

  public EdgeRig start() {
    PlantAddress address = PlantAddress.of(url, TestPlant.USER, () -> TestPlant.PASSWORD, null);
    PlantSettings settings = new PlantSettings(name, "north", address, 0);
    forwarder = new Forwarder(settings, batches, this::connect, store(), clock, HURRIED).start();
    return this;
  }

  Connection connect() throws SQLException {
    Properties properties = new Properties();
    properties.setProperty("user", TestPlant.USER);
    properties.setProperty("password", TestPlant.PASSWORD);
    properties.setProperty("currentSchema", "edge, plant");
    properties.setProperty("socketTimeout", "4");
    properties.setProperty("connectTimeout", "3");
    properties.setProperty("loginTimeout", "3");
    properties.setProperty("targetServerType", "primary");
    properties.setProperty("sslmode", "disable");
    return DriverManager.getConnection("jdbc:" + url, properties);
  }

  /** The next so many readings of the station A, committed when it returns. */
  public void measure(int count) {
    Reading first = like();
    long from = store().readings().lastSequence("A");
    List<CompletableFuture<Reading>> appended = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      if (appended.size() == UNDER_WAY) {
        appended.forEach(CompletableFuture::join);
        appended.clear();
      }
      appended.add(
          store().readings().append(Some.reading("A", from + i, first.jobId(), first.setUpId())));
    }
    appended.forEach(CompletableFuture::join);
  }

  private Reading like() {
    Reading known = like;
    if (known == null) {
      known = store().readings().find(1).orElseGet(() -> Kept.first(store()));
      like = known;
    }
    return known;
  }

  public void complete() throws Exception {
    Await.until(
        () -> {
          ForwardStatus status = forwarder().status();
          return status.state() == ForwardState.COMPLETE
              && store().feed().orElseThrow().newest().equals(delivered());
        },
        () -> forwarder().status());
  }

  /** What the ledger says. */
  public FeedPlace delivered() throws SQLException {
    try (Connection plant = server().connect(database);
        Statement statement = plant.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT b.last_revision, b.last_reading_id FROM plant.batch b JOIN plant.edge e"
                    + " USING (edge_id, incarnation) WHERE edge_id = '"
                    + store().identity()
                    + "' ORDER BY number DESC LIMIT 1")) {
      return row.next() ? new FeedPlace(row.getLong(1), row.getLong(2)) : FeedPlace.BEGINNING;
    }
  }

  /** Of a table of the plant, or what a statement gives. */
  public long count(String tableOrSql) throws SQLException {
    String sql =
        tableOrSql.startsWith("SELECT") ? tableOrSql : "SELECT count(*) FROM " + tableOrSql;
    try (Connection plant = server().connect(database);
        Statement statement = plant.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }

  /** All that the plant must have. */
  long rowsHere() throws SQLException {
    return TableRows.countOfEdge(directory.resolve("chordlog.db"));
  }

  /** Every row here is there, and none besides. */
  public void assertEqual() throws SQLException {
    try (Connection plant = server().connect(database)) {
      assertEquals(
          TableRows.text(TableRows.ofEdge(directory.resolve("chordlog.db"))),
          TableRows.text(TableRows.ofPlant(plant, store().identity())));
      assertTotals(plant);
    }
  }

  private void assertTotals(Connection plant) throws SQLException {
    try (Statement statement = plant.createStatement();
        ResultSet wrong =
            statement.executeQuery(
                "SELECT count(*) FROM (SELECT job_id, count(*) n, min(id) a, max(id) z FROM"
                    + " edge.reading WHERE kind = 'PRODUCT' GROUP BY job_id) r FULL JOIN (SELECT *"
                    + " FROM plant.job_total WHERE edge_id = plant.current_edge() AND incarnation ="
                    + " plant.current_incarnation()) t USING (job_id) WHERE (r.n, r.a, r.z) IS"
                    + " DISTINCT FROM (t.readings, t.first_reading_id, t.last_reading_id)")) {
      wrong.next();
      assertEquals(0, wrong.getLong(1), "totals of jobs differ from their readings");
    }
  }

  void stopForwarding() {
    Forwarder running = forwarder;
    forwarder = null;
    if (running != null) {
      running.close();
    }
  }

  @Override
  public void close() {
    stopForwarding();
    Store open = store;
    store = null;
    like = null;
    if (open != null) {
      open.close();
    }
  }
}
