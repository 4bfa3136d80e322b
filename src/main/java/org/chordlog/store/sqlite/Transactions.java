package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Stale;
import org.chordlog.store.DoneAlready;
import org.chordlog.store.RequestKey;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.PieceMoves;
import org.chordlog.store.sql.ProfileRow;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlAnsweredRequests;

/**
 * Runs a batch of tasks in one transaction on the writer's connection; the writer's thread only.
 */
final class Transactions {
  static final String EMPTY_WAL = "PRAGMA wal_checkpoint(TRUNCATE)";

  private final Connection connection;
  private final ReadingWriter readings;
  private final TraceWriter traces;
  private final Sealer sealer;
  private final Announced announced;
  private final WriterMeter meter;

  Transactions(
      Connection connection,
      ReadingWriter readings,
      TraceWriter traces,
      Sealer sealer,
      Announced announced,
      WriterMeter meter) {
    this.connection = connection;
    this.readings = readings;
    this.traces = traces;
    this.sealer = sealer;
    this.announced = announced;
    this.meter = meter;
  }

  /**
   * Whether there was anything to commit. Where it throws, nothing of the batch was committed, and
   * there are as many acknowledgements as tasks that were done without a failure.
   */
  boolean commit(List<WriteTask> batch, List<Runnable> acknowledgements, boolean last)
      throws SQLException {
    boolean tracesToo = traces.due(last);
    if (batch.isEmpty() && !tracesToo) {
      return false;
    }
    long start = System.nanoTime();
    Announced.Ids newest;
    try {
      Sql.run(connection, "BEGIN IMMEDIATE");
      fill(batch, acknowledgements);
      if (tracesToo) {
        traces.flush();
      } else {
        traces.flush(stations(batch));
      }
      newest = Announced.Ids.of(connection);
      Sql.run(connection, "COMMIT");
    } catch (SQLException | RuntimeException | Error e) {
      rollBack();
      throw e;
    }
    announced.committed(newest);
    committed(start);
    return true;
  }

  /** Copies the WAL back and truncates it to nothing; false while a reader prevents it. */
  boolean emptyWal() {
    try {
      return Sql.number(connection, EMPTY_WAL) == 0;
    } catch (SQLException e) {
      return false;
    }
  }

  private void fill(List<WriteTask> batch, List<Runnable> acknowledgements) throws SQLException {
    for (WriteTask work : batch) {
      acknowledgements.add(apply(work));
    }
    readings.flush();
    sealer.flush();
  }

  private static Set<String> stations(List<WriteTask> batch) {
    Set<String> stations = new HashSet<>();
    for (WriteTask work : batch) {
      if (work instanceof WriteTask.Append append) {
        stations.add(append.reading().station());
      }
    }
    return stations;
  }

  private void committed(long start) {
    long count = readings.committed();
    sealer.committed();
    meter.committed(count, traces.committed(), System.nanoTime() - start, Now.micros());
  }

  private void rollBack() throws SQLException {
    traces.rolledBack();
    try {
      Sql.run(connection, "ROLLBACK");
    } catch (SQLException e) {
      // A full disk may have ended the transaction already (sqlite.org/lang_transaction.html, 3).
      if (Failures.ofStorage(e)) {
        throw e;
      }
    } finally {
      sealer.rolledBack();
      readings.rolledBack();
    }
  }

  private Runnable apply(WriteTask work) throws SQLException {
    if (work instanceof WriteTask.Append append) {
      return apply(append);
    }
    return work instanceof WriteTask.Move move ? apply(move) : apply((WriteTask.Call<?>) work);
  }

  private Runnable apply(WriteTask.Append append) throws SQLException {
    try {
      Reading kept = insert(append);
      readings.kept(kept, append.rowHash());
      return () -> append.done().complete(kept);
    } catch (DoneAlready e) {
      return () -> append.done().completeExceptionally(e);
    } catch (SQLException e) {
      if (!Failures.ofValues(e)) {
        throw e;
      }
      return refuse(append, e);
    }
  }

  /** All of it or nothing; one row alone needs no savepoint, which would cost each reading. */
  private Reading insert(WriteTask.Append append) throws SQLException {
    if (append.isOneRow()) {
      return readings.insert(append.reading());
    }
    Sql.run(connection, "SAVEPOINT task");
    try {
      Reading kept = insertAll(append);
      Sql.run(connection, "RELEASE task");
      return kept;
    } catch (DoneAlready e) {
      undoTask();
      throw e;
    } catch (SQLException e) {
      if (Failures.ofValues(e)) {
        undoTask();
      }
      throw e;
    }
  }

  private Reading insertAll(WriteTask.Append append) throws SQLException {
    Reading kept = readings.insert(append.reading());
    for (PassedProfile profile : append.profiles()) {
      ProfileRow.insert(connection, kept.id(), profile);
    }
    RequestKey key = append.key();
    if (key != null) {
      SqlAnsweredRequests.note(connection, key);
    }
    return kept;
  }

  private Runnable apply(WriteTask.Move move) throws SQLException {
    Sql.run(connection, "SAVEPOINT task");
    try {
      List<Reading> kept = insertAll(move);
      Sql.run(connection, "RELEASE task");
      for (int i = 0; i < kept.size(); i++) {
        readings.kept(kept.get(i), move.rowHashes().get(i));
      }
      return () -> move.done().complete(kept);
    } catch (SQLException e) {
      if (!Failures.ofValues(e)) {
        throw e;
      }
      undoTask();
      return refuse(move.done(), e);
    } catch (BadInput | Stale | DoneAlready e) {
      undoTask();
      return () -> move.done().completeExceptionally(e);
    }
  }

  private List<Reading> insertAll(WriteTask.Move move) throws SQLException {
    List<Reading> kept = readings.insert(move.move().there());
    PieceMoves.insert(connection, move.move(), kept);
    RequestKey key = move.key();
    if (key != null) {
      SqlAnsweredRequests.note(connection, key);
    }
    return kept;
  }

  private <T> Runnable apply(WriteTask.Call<T> call) throws SQLException {
    if (call.done().isDone()) {
      return () -> {};
    }
    Sql.run(connection, "SAVEPOINT task");
    try {
      T result = call.body().run(connection);
      Sql.run(connection, "RELEASE task");
      return () -> call.done().complete(result);
    } catch (SQLException e) {
      if (Failures.ofStorage(e)) {
        throw e;
      }
      undoTask();
      return refuse(call.done(), e);
    } catch (RuntimeException e) {
      undoTask();
      return () -> call.done().completeExceptionally(e);
    }
  }

  private void undoTask() throws SQLException {
    Sql.run(connection, "ROLLBACK TO task");
    Sql.run(connection, "RELEASE task");
  }

  /** A reading that is refused is lost. */
  private Runnable refuse(WriteTask.Append append, SQLException e) {
    Runnable refusal = refuse(append.done(), e);
    return () -> {
      meter.readingDropped();
      refusal.run();
    };
  }

  private static Runnable refuse(CompletableFuture<?> done, SQLException e) {
    BadInput refusal =
        new BadInput("record", "", "breaks a rule of the database", String.valueOf(e.getMessage()));
    return () -> done.completeExceptionally(refusal);
  }
}
