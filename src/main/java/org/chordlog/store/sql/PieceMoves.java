package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.Change;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Stale;
import org.chordlog.store.PieceMove;
import org.chordlog.store.PieceMove.Moved;
import org.chordlog.store.PieceMove.MovedEvent;

/** What is written beside the readings that go to another job, within the same transaction. */
public final class PieceMoves {
  private PieceMoves() {}

  /**
   * {@code kept}: the new readings with their numbers, in order. {@link Stale} where one of the
   * jobs was closed meanwhile, or a reading excluded or included.
   */
  public static void insert(Connection connection, PieceMove move, List<Reading> kept)
      throws SQLException {
    for (Moved each : move.readings()) {
      requireAsSeen(connection, each);
    }
    requireOpen(connection, move.readings().get(0).from().jobId());
    requireOpen(connection, kept.get(0).jobId());
    for (int i = 0; i < kept.size(); i++) {
      exclude(connection, move.readings().get(i), kept.get(i).id());
    }
    for (MovedEvent each : move.events()) {
      insert(connection, each, kept.get(each.afterIndex()).id());
    }
    for (JobEvent each : move.notes()) {
      JobEvent unused = EventRow.insert(connection, each);
    }
    Change unused = SqlChanges.insert(connection, move.change());
  }

  private static void requireAsSeen(Connection connection, Moved moved) throws SQLException {
    String out =
        ExclusionRows.newest(connection, moved.from().id())
            .filter(Exclusion::excluded)
            .map(Exclusion::reason)
            .orElse(null);
    if (!Objects.equals(out, moved.outThere())) {
      throw new Stale(
          "A reading was excluded, included or moved meanwhile. Look again before you move any"
              + " piece.");
    }
  }

  private static void requireOpen(Connection connection, long jobId) throws SQLException {
    if (JobRow.required(connection, jobId).state() == Job.State.CLOSED) {
      throw new Stale("Job " + jobId + " was closed meanwhile; reopen it first.");
    }
  }

  private static void exclude(Connection connection, Moved moved, long there) throws SQLException {
    Exclusion here = moved.here();
    long unused = ExclusionRows.insert(connection, here);
    if (moved.outThere() != null) {
      unused =
          ExclusionRows.insert(
              connection,
              new Exclusion(0, there, true, moved.outThere(), here.atMicros(), here.by()));
    }
  }

  /** One that was taken back meanwhile goes nowhere. */
  private static void insert(Connection connection, MovedEvent event, long after)
      throws SQLException {
    if (!Withdrawals.takenBack(connection, event.here().eventId())) {
      JobEvent unused = EventRow.insert(connection, event.there().after(after));
      long unusedId = Withdrawals.insert(connection, event.here());
    }
  }
}
