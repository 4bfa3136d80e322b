package org.chordlog.store.sqlite;

import java.util.Optional;
import org.chordlog.store.Checkpoints;

record SqliteCheckpoints(Database database) implements Checkpoints {
  @Override
  public void put(String name, Checkpoint checkpoint) {
    database.write(
        connection ->
            Sql.update(
                connection,
                "INSERT OR REPLACE INTO checkpoint (name, reading_id, state) VALUES (?, ?, ?)",
                name,
                checkpoint.readingId(),
                checkpoint.state()));
  }

  @Override
  public Optional<Checkpoint> find(String name) {
    return database.read(
        connection ->
            Sql.first(
                connection,
                "SELECT reading_id, state FROM checkpoint WHERE name = ?",
                row -> new Checkpoint(row.getLong(1), row.getString(2)),
                name));
  }

  @Override
  public void remove(String name) {
    database.write(
        connection -> Sql.update(connection, "DELETE FROM checkpoint WHERE name = ?", name));
  }
}
