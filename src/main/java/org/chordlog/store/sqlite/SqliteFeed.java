package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.OptionalLong;
import org.chordlog.measure.Change;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlChanges;

record SqliteFeed(Database database) implements Feed {
  @Override
  public Edge edge() {
    return database.read(c -> new Edge(SealEntry.uuid(c), Incarnation.of(c)));
  }

  @Override
  public int schemaVersion() {
    return Schema.VERSION;
  }

  @Override
  public FeedPage page(FeedPlace after, int mostRows, long mostBytes) {
    return inOneMoment(c -> new FeedReader(c, mostRows, mostBytes).page(after));
  }

  private <T> T inOneMoment(Sql.Body<T> body) {
    return database.read(
        connection -> {
          Sql.run(connection, "BEGIN");
          try {
            return body.run(connection);
          } finally {
            Sql.run(connection, "COMMIT");
          }
        });
  }

  @Override
  public FeedPage.Rest rest(FeedPlace after) {
    return database.read(c -> rest(c, after));
  }

  static FeedPage.Rest rest(Connection connection, FeedPlace after) throws SQLException {
    return Sql.first(
            connection, FeedSql.REST, SqliteFeed::rest, after.revision(), after.readingId())
        .orElse(FeedPage.Rest.NONE);
  }

  private static FeedPage.Rest rest(ResultSet row) throws SQLException {
    return new FeedPage.Rest(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4));
  }

  @Override
  public FeedPlace newest() {
    return database
        .read(
            c -> Sql.first(c, FeedSql.NEWEST, row -> new FeedPlace(row.getLong(1), row.getLong(2))))
        .orElse(FeedPlace.BEGINNING);
  }

  @Override
  public Optional<String> sealHash(long seq) {
    return database.read(c -> sealHash(c, seq));
  }

  private static Optional<String> sealHash(Connection connection, long seq) throws SQLException {
    return seq == 0
        ? Optional.of(SealEntry.none(SealEntry.uuid(connection)).hashText())
        : Sql.first(
            connection,
            "SELECT hash FROM seal WHERE seq = ?",
            row -> HexFormat.of().formatHex(row.getBytes(1)),
            seq);
  }

  @Override
  public OptionalLong mark(long revision) {
    return database.read(c -> mark(c, revision)).map(OptionalLong::of).orElse(OptionalLong.empty());
  }

  static Optional<Long> mark(Connection connection, long revision) throws SQLException {
    return Sql.first(
        connection,
        "SELECT mark FROM change_feed WHERE revision = ?",
        row -> row.getLong(1),
        revision);
  }

  @Override
  public int beginIncarnation(int above, Change change) {
    return database.write(
        connection -> {
          Change unused = SqlChanges.insert(connection, change);
          return Incarnation.raise(connection, above);
        });
  }
}
