package org.chordlog.store.sql;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads on connections of their own, writes through the writer; any thread. */
public record Database(Reads reads, Writes writes, Unreadable unreadable, Dialect dialect) {
  /**
   * Runs it on a connection for reading; throws {@link org.chordlog.store.StoreException} where the
   * database fails.
   */
  public <T> T read(Sql.Body<T> body) {
    return reads.read(body);
  }

  /** What can be read of records of which one may be damaged. */
  <T> List<T> list(
      Unreadable.Kind kind, String sql, Sql.Mapper<T> mapper, @Nullable Object... arguments) {
    return read(connection -> unreadable.list(connection, kind, sql, mapper, arguments));
  }

  /** The record of that id, if there is one. */
  <T> Optional<T> one(Unreadable.Kind kind, String sql, Sql.Mapper<T> mapper, long id) {
    return read(connection -> unreadable.one(connection, kind, sql, mapper, id)).stream()
        .findFirst();
  }

  /** Committed when it returns. */
  public <T> T write(Sql.Body<T> body) {
    return writes.call(body);
  }
}
