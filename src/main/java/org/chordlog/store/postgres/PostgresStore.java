package org.chordlog.store.postgres;

import java.util.concurrent.atomic.AtomicBoolean;
import javax.sql.DataSource;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.SealTip;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlStore;
import org.chordlog.store.sql.Unreadable;
import org.chordlog.store.sql.Writes;

/**
 * The records of one edge in the database of a plant, with the ids that they have at the edge. It
 * holds no connection of its own; any thread.
 */
final class PostgresStore extends SqlStore {
  private static final String SEALED =
      "SELECT seal_seq, seal_hash FROM plant.batch WHERE edge_id = plant.current_edge()"
          + " AND incarnation = (SELECT plant.current_incarnation()) ORDER BY number DESC LIMIT 1";

  private final EdgeReads reads;
  private final Database database;
  private final String fault;
  private final Database own;

  private PostgresStore(EdgeReads reads, Writes writes, Writes ownWrites, String fault) {
    this(reads, database(reads, writes), database(reads, ownWrites), fault);
  }

  private PostgresStore(EdgeReads reads, Database database, Database own, String fault) {
    super(database);
    this.reads = reads;
    this.database = database;
    this.own = own;
    this.fault = fault;
  }

  private static Database database(EdgeReads reads, Writes writes) {
    return new Database(reads, writes, new Unreadable(), new PostgresDialect());
  }

  /** Everything may be changed: for what belongs to the plant itself, and for tests. */
  static PostgresStore written(DataSource pool, String edge) {
    EdgeReads reads = new EdgeReads(pool, edge, new AtomicBoolean());
    EdgeWrites writes = new EdgeWrites(reads);
    return new PostgresStore(reads, writes, writes, "");
  }

  /** Of an edge of that name: nothing may be changed but the checkpoints. */
  static PostgresStore delivered(DataSource pool, String edge, String name) {
    EdgeReads reads = new EdgeReads(pool, edge, new AtomicBoolean());
    Writes refused = new Writes.Refused(() -> changedAt(name));
    return new PostgresStore(
        reads, refused, new EdgeWrites(reads), "read here, written at " + name);
  }

  private static BadInput changedAt(String name) {
    return new BadInput(
        "record",
        "of " + name,
        "can only be looked at here, at the plant",
        "a change on the workshop computer '" + name + "' itself");
  }

  static PostgresStore forReading(DataSource pool, String edge) {
    EdgeReads reads = new EdgeReads(pool, edge, new AtomicBoolean());
    Writes refused = Writes.Refused.readingOnly();
    return new PostgresStore(reads, refused, refused, "open for reading only");
  }

  Database database() {
    return database;
  }

  @Override
  public String identity() {
    reads.requireOpen();
    return reads.edge();
  }

  /** Changes with the incarnation of the edge. */
  @Override
  public String epoch() {
    return "history " + database.read(c -> Sql.number(c, "SELECT plant.current_incarnation()"));
  }

  @Override
  public SealTip seal() {
    return database
        .read(
            c ->
                Sql.first(
                    c, SEALED, row -> new SealTip(reads.edge(), row.getLong(1), row.getString(2))))
        .orElse(new SealTip(reads.edge(), 0, "0".repeat(64)));
  }

  @Override
  public Checkpoints checkpoints() {
    return checkpoints(own);
  }

  @Override
  public StoreHealth health() {
    return new StoreHealth(
        fault.isEmpty(),
        fault,
        database.unreadable().found().stream().map(each -> each.sentence()).toList(),
        new StoreHealth.Queue(0, 1),
        new StoreHealth.Counts(0, 0, 0, 0),
        new StoreHealth.Commits(0, 0),
        new StoreHealth.Space(0, 0, Long.MAX_VALUE));
  }

  @Override
  public void close() {
    reads.closed().set(true);
  }
}
