package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.LogbookEntry.Correction;
import org.chordlog.measure.LogbookEntry.Work;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.store.Logbooks;
import org.jspecify.annotations.Nullable;

record SqlLogbooks(Database database) implements Logbooks {
  private static final String SELECT =
      "SELECT e.*, c.id corrected_by FROM logbook_entry e"
          + " LEFT JOIN logbook_entry c ON c.corrects_id = e.id ";

  @Override
  public LogbookEntry add(LogbookEntry entry) {
    return entry.withId(database.write(connection -> insert(connection, entry)));
  }

  private static long insert(Connection connection, LogbookEntry entry) throws SQLException {
    Correction correction = entry.correction();
    if (correction != null) {
      requireInForce(connection, entry.machine(), correction.entryId());
    }
    Work work = entry.work();
    return Sql.insert(
        connection,
        "INSERT INTO logbook_entry (machine, kind, roller, state_before, state_after, note,"
            + " done_micros, done_by, corrects_id, why, withdraws, at_micros, made_by) VALUES ("
            + Sql.places(13)
            + ")",
        entry.machine(),
        work.kind().name(),
        work.roller(),
        work.before(),
        work.after(),
        work.note(),
        entry.done().atMicros(),
        entry.done().by(),
        correction == null ? null : correction.entryId(),
        correction == null ? "" : correction.why(),
        entry.tellsOfWork() ? 0 : 1,
        entry.recorded().atMicros(),
        entry.recorded().by());
  }

  private static void requireInForce(Connection connection, String machine, long id)
      throws SQLException {
    Listed corrected =
        find(connection, id)
            .filter(each -> each.entry().machine().equals(machine))
            .orElseThrow(
                () -> new BadInput("entryId", id, "does not exist", "an entry of " + machine));
    if (corrected.correctedById() != null) {
      throw new Stale("Entry " + id + " was corrected meanwhile. Look at what it says now.");
    }
  }

  private static Optional<Listed> find(Connection connection, long id) throws SQLException {
    return Sql.first(connection, SELECT + "WHERE e.id = ?", SqlLogbooks::map, id);
  }

  @Override
  public Optional<Listed> find(long id) {
    return database.read(connection -> find(connection, id));
  }

  @Override
  public List<Listed> ofMachine(String machine, long beforeId, int limit) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                SELECT + "WHERE e.machine = ? AND e.id < ? ORDER BY e.id DESC LIMIT ?",
                SqlLogbooks::map,
                machine,
                beforeId,
                limit));
  }

  private static Listed map(ResultSet row) throws SQLException {
    long corrects = row.getLong("corrects_id");
    Correction correction =
        row.wasNull()
            ? null
            : new Correction(corrects, row.getString("why"), row.getInt("withdraws") == 1);
    LogbookEntry entry =
        new LogbookEntry(
            row.getLong("id"),
            row.getString("machine"),
            work(row),
            new Recorded(row.getLong("done_micros"), row.getString("done_by")),
            correction,
            new Recorded(row.getLong("at_micros"), row.getString("made_by")));
    return new Listed(entry, correctedBy(row));
  }

  private static Work work(ResultSet row) throws SQLException {
    return new Work(
        LogbookEntry.Kind.valueOf(row.getString("kind")),
        row.getString("roller"),
        row.getString("state_before"),
        row.getString("state_after"),
        row.getString("note"));
  }

  private static @Nullable Long correctedBy(ResultSet row) throws SQLException {
    long id = row.getLong("corrected_by");
    return row.wasNull() ? null : (Long) id;
  }
}
