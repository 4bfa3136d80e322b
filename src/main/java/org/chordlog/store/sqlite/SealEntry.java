package org.chordlog.store.sqlite;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import org.chordlog.store.SealTip;
import org.chordlog.store.sql.Hashes;
import org.chordlog.store.sql.Sql;

/** An entry of the chain of hashes, as schema-4.sql describes it. */
@SuppressWarnings("ArrayRecordComponent") // never compared as a whole
record SealEntry(long seq, long atMicros, byte[] body, byte[] hash) {
  static final String SELECT = "SELECT seq, at_micros, body, hash FROM seal ";

  /** Of the database's layout. */
  static final int SINCE_VERSION = 4;

  static final int RECORD_BYTES = 1 + Long.BYTES + Hashes.BYTES;

  /** Of databases before they had one. */
  private static final String NAMELESS = "none";

  private static final String BEFORE_ALL = "chordlog seal 1 ";

  /** Before the first entry: nothing but the database's own name. */
  static SealEntry none(String uuid) {
    byte[] start = (BEFORE_ALL + uuid).getBytes(StandardCharsets.US_ASCII);
    return new SealEntry(0, 0, new byte[0], Hashes.sha256().digest(start));
  }

  static SealEntry newest(Connection connection) throws SQLException {
    return Sql.first(connection, SELECT + "ORDER BY seq DESC LIMIT 1", SealEntry::map)
        .orElse(none(uuid(connection)));
  }

  static String uuid(Connection connection) throws SQLException {
    boolean named =
        Sql.number(connection, "SELECT count(*) FROM sqlite_schema WHERE name = 'identity'") > 0;
    return named
        ? Sql.first(connection, "SELECT uuid FROM identity", row -> row.getString(1))
            .orElse(NAMELESS)
        : NAMELESS;
  }

  static SealEntry map(ResultSet row) throws SQLException {
    return new SealEntry(row.getLong(1), row.getLong(2), row.getBytes(3), row.getBytes(4));
  }

  /** The entry after this one. */
  SealEntry next(long micros, byte[] records) {
    return new SealEntry(seq + 1, micros, records, hash(hash, seq + 1, micros, records));
  }

  /** Whether the hash follows from the entry before and from what is in here. */
  boolean follows(SealEntry before) {
    return MessageDigest.isEqual(hash, hash(before.hash, seq, atMicros, body));
  }

  private static byte[] hash(byte[] before, long seq, long atMicros, byte[] body) {
    MessageDigest sha = Hashes.sha256();
    sha.update(before);
    sha.update(ByteBuffer.allocate(2 * Long.BYTES).putLong(seq).putLong(atMicros).array());
    return sha.digest(body);
  }

  void insert(Connection connection) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO seal VALUES (?, ?, ?, ?)")) {
      insert.setLong(1, seq);
      insert.setLong(2, atMicros);
      insert.setBytes(3, body);
      insert.setBytes(4, hash);
      insert.executeUpdate();
    }
  }

  SealTip tip(String uuid) {
    return new SealTip(uuid, seq, hashText());
  }

  int records() {
    return body.length / RECORD_BYTES;
  }

  String hashText() {
    return HexFormat.of().formatHex(hash);
  }
}
