package org.chordlog.store.sql;

import java.util.List;
import java.util.Optional;
import org.chordlog.store.Checkpoints;

record SqlCheckpoints(Database database) implements Checkpoints {
  @Override
  public void put(Slot slot, byte[] state) {
    database.write(
        connection ->
            Sql.put(
                connection,
                "UPDATE checkpoint SET reading_id = ?, state = ? WHERE owner = ? AND level = ?",
                "INSERT INTO checkpoint (reading_id, state, owner, level) VALUES (?, ?, ?, ?)",
                slot.readingId(),
                state,
                slot.owner(),
                slot.level()));
  }

  @Override
  public List<Slot> of(String owner) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT level, reading_id FROM checkpoint WHERE owner = ?"
                    + " ORDER BY reading_id DESC",
                row -> new Slot(owner, row.getInt(1), row.getLong(2)),
                owner));
  }

  @Override
  public Optional<byte[]> find(Slot slot) {
    return database.read(
        connection ->
            Sql.first(
                connection,
                "SELECT state FROM checkpoint WHERE owner = ? AND level = ? AND reading_id = ?",
                row -> row.getBytes(1),
                slot.owner(),
                slot.level(),
                slot.readingId()));
  }

  @Override
  public void removeAbove(String owner, long readingId) {
    database.write(
        connection ->
            Sql.update(
                connection,
                "DELETE FROM checkpoint WHERE owner = ? AND reading_id > ?",
                owner,
                readingId));
  }
}
