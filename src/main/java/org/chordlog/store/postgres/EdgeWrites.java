package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.measure.Sample;
import org.chordlog.measure.Stale;
import org.chordlog.store.DoneAlready;
import org.chordlog.store.PieceMove;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.PieceMoves;
import org.chordlog.store.sql.ProfileRow;
import org.chordlog.store.sql.ReadingRow;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlAnsweredRequests;
import org.chordlog.store.sql.TraceRow;
import org.chordlog.store.sql.Writes;

/**
 * Each change in a transaction of its own on the caller's thread. Those of one edge wait for each
 * other, so that ids become visible in their order.
 */
record EdgeWrites(EdgeReads reads) implements Writes {
  private static final String LOCK =
      "SELECT pg_advisory_xact_lock(hashtextextended('chordlog writes ' || ?, 0))";
  private static final int NO_RUN = 0;

  @Override
  public <T> T call(Sql.Body<T> body) {
    reads.requireOpen();
    try (Connection connection = reads.pool().getConnection()) {
      reads.show(connection);
      return committed(connection, SqlAnsweredRequests.keyed(body));
    } catch (SQLException e) {
      throw refusal(e);
    }
  }

  private <T> T committed(Connection connection, Sql.Body<T> body) throws SQLException {
    connection.setAutoCommit(false);
    try {
      Sql.list(connection, LOCK, row -> true, reads.edge());
      reads.requireOpen();
      T result = body.run(connection);
      connection.commit();
      return result;
    } catch (SQLException | RuntimeException e) {
      rollBack(connection, e);
      throw e;
    } finally {
      connection.setAutoCommit(true);
    }
  }

  private static void rollBack(Connection connection, Exception why) {
    try {
      connection.rollback();
    } catch (SQLException e) {
      why.addSuppressed(e);
    }
  }

  private static RuntimeException refusal(SQLException e) {
    return PostgresFailures.ofValues(e)
        ? new BadInput(
            "record", "", "breaks a rule of the database", String.valueOf(e.getMessage()))
        : new StoreException("not stored: " + PostgresFailures.sentence(e), e);
  }

  @Override
  public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    try {
      return CompletableFuture.completedFuture(call(c -> insert(c, reading, profiles)));
    } catch (BadInput | StoreException | DoneAlready e) {
      return CompletableFuture.failedFuture(e);
    }
  }

  @Override
  public CompletableFuture<List<Reading>> move(PieceMove move) {
    try {
      return CompletableFuture.completedFuture(call(connection -> insert(connection, move)));
    } catch (BadInput | Stale | StoreException | DoneAlready e) {
      return CompletableFuture.failedFuture(e);
    }
  }

  private static List<Reading> insert(Connection connection, PieceMove move) throws SQLException {
    List<Reading> kept = new ArrayList<>();
    for (Reading each : move.there()) {
      kept.add(insert(connection, each, List.of()));
    }
    PieceMoves.insert(connection, move, kept);
    return kept;
  }

  private static Reading insert(Connection connection, Reading reading, List<PassedProfile> runs)
      throws SQLException {
    require(connection, "SELECT count(*) FROM job WHERE id = ?", "jobId", reading.jobId());
    require(connection, "SELECT count(*) FROM set_up WHERE id = ?", "setUpId", reading.setUpId());
    refuseSecond(connection, reading);
    long id = Sql.number(connection, "SELECT plant.next_id('reading')");
    try (PreparedStatement insert = connection.prepareStatement(ReadingRow.INSERT)) {
      ReadingRow.bind(insert, reading, id, NO_RUN);
      insert.executeUpdate();
    }
    for (PassedProfile each : runs) {
      ProfileRow.insert(connection, id, each);
    }
    count(connection, reading, id);
    return reading.withId(id);
  }

  private static void require(Connection connection, String count, String field, long id)
      throws SQLException {
    if (Sql.number(connection, count, id) == 0) {
      throw new BadInput(field, id, "does not exist", "the number of a record that is stored");
    }
  }

  private static void refuseSecond(Connection connection, Reading reading) throws SQLException {
    String same = "SELECT count(*) FROM reading WHERE station = ? AND station_sequence = ?";
    if (Sql.number(connection, same, reading.station(), reading.stationSequence()) > 0) {
      throw new BadInput(
          "stationSequence", reading.stationSequence(), "is stored already", "the next number");
    }
  }

  private static void count(Connection connection, Reading reading, long id) throws SQLException {
    if (reading.circumstances().kind() == ReadingKind.PRODUCT) {
      Sql.put(
          connection,
          "UPDATE job_total SET readings = readings + 1, last_reading_id = ? WHERE job_id = ?",
          "WITH one AS (SELECT ?::bigint AS id) INSERT INTO job_total (job_id, readings,"
              + " first_reading_id, last_reading_id) SELECT ?, 1, id, id FROM one",
          id,
          reading.jobId());
    }
  }

  @Override
  public boolean append(String station, List<Sample> samples) {
    if (!samples.isEmpty()) {
      call(connection -> insert(connection, station, samples));
    }
    return true;
  }

  private static int insert(Connection connection, String station, List<Sample> samples)
      throws SQLException {
    TraceRow.of(station, samples, true).insert(connection);
    return samples.size();
  }
}
