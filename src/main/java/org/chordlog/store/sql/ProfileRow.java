package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.PassedProfile;
import org.chordlog.store.json.StoredJson;

/** The profile of a piece that ran through, as a row. */
public final class ProfileRow {
  public static final String SELECT = "SELECT reading_id, pass, basis, packed FROM profile ";

  private ProfileRow() {}

  public static void insert(Connection connection, long readingId, PassedProfile profile)
      throws SQLException {
    Sql.update(
        connection,
        "INSERT INTO profile (reading_id, pass, basis, packed) VALUES (?, ?, ?, ?)",
        readingId,
        profile.pass(),
        StoredJson.of(profile.basis()),
        profile.packed());
  }

  static PassedProfile map(ResultSet row) throws SQLException {
    return new PassedProfile(
        row.getInt("pass"),
        row.getBytes("packed"),
        StoredJson.profileBasis(row.getString("basis")));
  }
}
