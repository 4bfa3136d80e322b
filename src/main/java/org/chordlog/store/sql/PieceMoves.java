package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Change;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.store.PieceMove;
import org.chordlog.store.PieceMove.Moved;
import org.chordlog.store.PieceMove.MovedEvent;

/** What is written beside the readings that go to another job, within the same transaction. */
public final class PieceMoves {
  private PieceMoves() {}

  /** {@code kept}: the new readings with their numbers, in order. */
  public static void insert(Connection connection, PieceMove move, List<Reading> kept)
      throws SQLException {
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
