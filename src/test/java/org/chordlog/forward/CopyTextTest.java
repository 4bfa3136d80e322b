package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.FeedRow;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;

/** What COPY makes of our rows, by a real PostgreSQL. */
@Tag("slow")
final class CopyTextTest {
  private static final List<String> TEXTS =
      List.of("", "\\N", "\\.", "a\tb\nc\rd\\e", "Größe 5 µm 轧", "\uD83D\uDEE0", "x".repeat(9_000));

  @Test
  void everyValueComesBackAsItWas() throws Exception {
    PostgresServer server = PostgresServer.shared();
    List<FeedRow> rows = rows();
    try (Connection connection = server.connect(server.database());
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE TABLE t (n bigint, d float8, s text, b bytea, r bigint)");
      byte[] text = CopyText.of(rows, true);
      var in = connection.unwrap(PGConnection.class).getCopyAPI().copyIn("COPY t FROM STDIN");
      in.writeToCopy(text, 0, text.length);
      assertEquals(rows.size(), in.endCopy());
      try (ResultSet back = statement.executeQuery("SELECT * FROM t ORDER BY r")) {
        for (FeedRow row : rows) {
          assertTrue(back.next());
          assertEquals(row.values().get(0), back.getObject(1));
          assertEquals(row.values().get(1), back.getObject(2));
          assertEquals(row.values().get(2), back.getString(3));
          assertArrayEquals((byte[]) row.values().get(3), back.getBytes(4));
        }
      }
    }
  }

  /** PostgreSQL has no place for it in a text (documentation, 8.3). */
  @Test
  void aNulBecomesTheReplacementCharacter() throws Exception {
    PostgresServer server = PostgresServer.shared();
    try (Connection connection = server.connect(server.database());
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE TABLE t (s text, r bigint)");
      FeedRow row = FeedRow.of(1, new @Nullable Object[] {"lot\0 7"});
      byte[] text = CopyText.of(List.of(row), true);
      var in = connection.unwrap(PGConnection.class).getCopyAPI().copyIn("COPY t FROM STDIN");
      in.writeToCopy(text, 0, text.length);
      assertEquals(1, in.endCopy());
      try (ResultSet back = statement.executeQuery("SELECT s FROM t")) {
        assertTrue(back.next());
        assertEquals("lot\ufffd 7", back.getString(1));
      }
    }
  }

  private static List<FeedRow> rows() {
    Random random = new Random(7);
    List<FeedRow> rows = new ArrayList<>();
    rows.add(FeedRow.of(0, new @Nullable Object[] {null, null, null, null}));
    double[] special = {
      Double.MIN_VALUE,
      Double.MAX_VALUE,
      0.1 + 0.2,
      1e-6 / 3,
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY,
      Double.MIN_NORMAL,
      9_007_199_254_740_992.0
    };
    for (int i = 1; i <= 2_000; i++) {
      double number = Double.longBitsToDouble(random.nextLong());
      byte[] bytes = new byte[random.nextInt(40)];
      random.nextBytes(bytes);
      @Nullable Double value = stored(i < special.length ? special[i] : number);
      rows.add(
          FeedRow.of(
              i,
              new @Nullable Object[] {
                random.nextLong(), value, TEXTS.get(i % TEXTS.size()), bytes
              }));
    }
    return rows;
  }

  /** SQLite has no value for what is not a number. */
  private static @Nullable Double stored(double number) {
    if (Double.isNaN(number)) {
      return null;
    }
    return number;
  }
}
