package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.chordlog.measure.SetUp;
import org.chordlog.store.json.StoredJson;

/** Set-ups as JSON; equal ones share a row. */
record SetUps(Database database) {
  long keep(SetUp setUp) {
    String body = StoredJson.of(setUp);
    return database.write(connection -> keep(connection, body));
  }

  private static long keep(Connection connection, String body) throws SQLException {
    long found = Sql.number(connection, "SELECT id FROM set_up WHERE body = ?", body);
    return found > 0 ? found : Sql.insert(connection, "INSERT INTO set_up (body) VALUES (?)", body);
  }

  Optional<SetUp> find(long id) {
    return text(id).map(StoredJson::setUp);
  }

  Optional<String> text(long id) {
    return database.read(
        connection ->
            Sql.first(
                connection, "SELECT body FROM set_up WHERE id = ?", row -> row.getString(1), id));
  }
}
