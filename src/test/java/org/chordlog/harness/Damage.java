package org.chordlog.harness;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.store.sqlite.SqliteStore;

/** Does one thing to the files of a killed service, at random by a seed; says what it did. */
final class Damage {
  /** A table and the columns that are hashed, as the check in Python has them. */
  private static final Pattern SEALED =
      Pattern.compile("\\d+: \\(\"(\\w+)\", ((?:\\s*\"[^\"]*\")+)");

  /** Three of four flips are in the database, the others in its journal; so it is with edits. */
  private static final int ONE_OF = 4;

  /** Beyond every number there is, since some columns hold each number once. */
  private static final int FAR = 1_000_003;

  private final Path data;
  private final Random random;
  private final Map<String, List<String>> sealed = new LinkedHashMap<>();

  Damage(Path data, long seed) throws IOException {
    this.data = data;
    random = new Random(seed);
    Matcher table = SEALED.matcher(Files.readString(Path.of("src/docs/check-seal.py")));
    while (table.find()) {
      sealed.put(
          table.group(1), List.of(table.group(2).replaceAll("[\"\\s]+", " ").strip().split(" ")));
    }
  }

  private Path database() {
    return data.resolve(SqliteStore.FILE_NAME);
  }

  private Path journal() {
    return data.resolve(SqliteStore.FILE_NAME + "-wal");
  }

  String flip() throws IOException {
    Path file = random.nextInt(ONE_OF) == 0 ? journal() : database();
    byte[] bytes = Files.readAllBytes(file);
    int place = random.nextInt(bytes.length);
    int bit = random.nextInt(Byte.SIZE);
    bytes[place] ^= (byte) (1 << bit);
    Files.write(file, bytes);
    return "bit " + bit + " of byte " + place + " of " + file.getFileName();
  }

  String cut() throws IOException {
    long length = (long) (random.nextDouble() * Files.size(journal()));
    try (FileChannel channel = FileChannel.open(journal(), StandardOpenOption.WRITE)) {
      channel.truncate(length);
    }
    return "journal cut to " + length;
  }

  /** One value of one sealed row, by SQL; three of four times of a reading. */
  String edit() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database());
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("PRAGMA foreign_keys = OFF");
      statement.executeUpdate("PRAGMA ignore_check_constraints = ON");
      String table = table(statement);
      String key = key(statement, table);
      String row = any(texts(statement, "SELECT %s FROM %s".formatted(key, table)));
      String which = "%s = '%s'".formatted(key, row);
      List<String> columns = new ArrayList<>(sealed.get(table));
      columns.remove("id");
      String column = any(columns);
      statement.executeUpdate(
          "UPDATE %s SET %s = %s WHERE %s"
              .formatted(table, column, another(statement, table, column, which), which));
      return column + " of " + table + " " + row;
    }
  }

  /** What tells the rows of a table apart, as a text: some have no row id of their own. */
  private static String key(Statement statement, String table) throws SQLException {
    List<String> sql =
        texts(statement, "SELECT sql FROM sqlite_schema WHERE name = '" + table + "'");
    return sql.get(0).contains("WITHOUT ROWID")
        ? String.join(
            " || '/' || ",
            texts(
                statement,
                "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 ORDER BY pk"))
        : "CAST(rowid AS TEXT)";
  }

  private String table(Statement statement) throws SQLException {
    List<String> filled = new ArrayList<>();
    for (String each : sealed.keySet()) {
      if (!texts(statement, "SELECT 1 FROM " + each + " LIMIT 1").isEmpty()) {
        filled.add(each);
      }
    }
    return random.nextInt(ONE_OF) == 0 ? any(filled) : "reading";
  }

  /** Something else than what is there, of the type that the column has. */
  private static String another(Statement statement, String table, String column, String which)
      throws SQLException {
    try (ResultSet type =
        statement.executeQuery(
            "SELECT (SELECT type FROM pragma_table_info('%s') WHERE name = '%s'), %s IS NULL FROM %s WHERE %s"
                .formatted(table, column, column, table, which))) {
      boolean text = type.getString(1).equals("TEXT");
      boolean none = type.getBoolean(2);
      return text ? "ifnull(" + column + ", '') || 'x'" : none ? "1" : column + " + " + FAR;
    }
  }

  private static List<String> texts(Statement statement, String query) throws SQLException {
    List<String> found = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        found.add(rows.getString(1));
      }
    }
    return found;
  }

  private <T> T any(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }
}
