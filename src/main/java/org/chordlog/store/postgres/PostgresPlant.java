package org.chordlog.store.postgres;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Recorded;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Unreadable;
import org.jspecify.annotations.Nullable;

/** The edges of a plant over a few shared connections; any thread. */
public final class PostgresPlant implements Plant {
  static final String OWN = "00000000-0000-0000-0000-000000000000";
  static final int CONNECTIONS = 8;

  private final PlantAddress address;
  private final HikariDataSource pool;
  private final PostgresStore own;
  private final Unreadable unreadable = new Unreadable();
  private final Map<String, Store> stores = new ConcurrentHashMap<>();

  private PostgresPlant(PlantAddress address, HikariDataSource pool) {
    this.address = address;
    this.pool = pool;
    this.own = PostgresStore.written(pool, OWN);
  }

  /** {@link BadInput} where the database is of another version. */
  public static PostgresPlant open(PlantAddress address) {
    return open(address, PlantConnections.Limits.PAGES);
  }

  static PostgresPlant open(PlantAddress address, PlantConnections.Limits limits) {
    // not by the pool, which gives up sooner and says less
    try (Connection connection = PlantConnections.open(address, "chordlog plant", limits)) {
      PlantSchema.require(connection);
    } catch (SQLException e) {
      throw new StoreException(PostgresFailures.sentence(e), e);
    }
    return new PostgresPlant(address, PlantPool.open(address, CONNECTIONS, limits));
  }

  private <T> T ask(Sql.Body<T> body) {
    if (pool.isClosed()) {
      throw new StoreException("the plant is closed", null);
    }
    try (Connection connection = pool.getConnection()) {
      return body.run(connection);
    } catch (SQLException e) {
      throw new StoreException(PostgresFailures.sentence(e), e);
    }
  }

  @Override
  public List<Edge> edges() {
    return ask(EdgeRows::all);
  }

  @Override
  public Optional<Edge> edge(String id) {
    return edges().stream().filter(each -> each.id().equals(id)).findFirst();
  }

  @Override
  public Store store(String edgeId) {
    return stores.computeIfAbsent(
        edgeId, id -> PostgresStore.delivered(pool, id, required(id).name()));
  }

  private Edge required(String id) {
    return edge(id)
        .orElseThrow(
            () -> new BadInput("edge", id, "does not exist", "the number of a workshop computer"));
  }

  @Override
  public List<FoundJob> jobs(JobQuery.Filter filter, @Nullable String edgeId, int limit) {
    Check.within("limit", limit, 1, JobQuery.MOST);
    return ask(connection -> new FoundJobs(unreadable).list(connection, filter, edgeId, limit));
  }

  @Override
  public Store own() {
    return own;
  }

  @Override
  public Request ask(String edgeId, RequestKind kind, String body, Recorded by) {
    Edge edge = required(edgeId);
    return own.database()
        .write(connection -> RequestRows.insert(connection, edge.id(), kind, body, by));
  }

  @Override
  public List<Request> requests(String edgeId, long beforeId, int limit) {
    return ask(connection -> RequestRows.list(connection, edgeId, beforeId, limit));
  }

  @Override
  public Turn turn(String of) {
    return new PostgresTurn(address, of);
  }

  @Override
  public void close() {
    own.close();
    stores.values().forEach(Store::close);
    pool.close();
  }
}
