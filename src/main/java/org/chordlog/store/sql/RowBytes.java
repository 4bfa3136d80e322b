package org.chordlog.store.sql;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * The values of a row in the form that is hashed, one after the other: {@code i} and 8 bytes of a
 * whole number; {@code r} and the 8 bytes of a double (IEEE 754), zero without a sign; {@code t}, 4
 * bytes of length and the text in UTF-8; {@code n} for none. High bytes first.
 */
public final class RowBytes implements RowValues {
  private static final int FIRST_BYTES = 1 << 10;

  private final MessageDigest sha = Hashes.sha256();
  private ByteBuffer bytes = ByteBuffer.allocate(FIRST_BYTES);

  /** Drops what a row that failed left behind. */
  void begin() {
    bytes.clear();
  }

  @Override
  public RowBytes add(long value) {
    room(1 + Long.BYTES).put((byte) 'i').putLong(value);
    return this;
  }

  /** SQLite keeps no sign of zero, and nothing where it is not a number. */
  @Override
  public RowBytes add(double value) {
    if (Double.isNaN(value)) {
      return addNothing();
    }
    room(1 + Double.BYTES).put((byte) 'r').putDouble(value + 0.0);
    return this;
  }

  @Override
  public RowBytes add(@Nullable String text) {
    if (text == null) {
      return addNothing();
    }
    byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
    room(1 + Integer.BYTES + utf8.length).put((byte) 't').putInt(utf8.length).put(utf8);
    return this;
  }

  @Override
  public RowBytes addNullable(@Nullable Double value) {
    return value == null ? addNothing() : add(value.doubleValue());
  }

  @Override
  public RowBytes addNullable(@Nullable Integer value) {
    return value == null ? addNothing() : add(value.longValue());
  }

  private RowBytes addNothing() {
    room(1).put((byte) 'n');
    return this;
  }

  /** The SHA-256 of what was added; the next row begins. */
  byte[] hash() {
    sha.update(bytes.array(), 0, bytes.position());
    bytes.clear();
    return sha.digest();
  }

  /** Of the columns after the first, which is the key. */
  public byte[] hash(ResultSet row) throws SQLException {
    int columns = row.getMetaData().getColumnCount();
    for (int i = 2; i <= columns; i++) {
      RowBytes unused = addCell(row.getObject(i));
    }
    return hash();
  }

  private RowBytes addCell(@Nullable Object value) {
    if (value instanceof Double number) {
      return add(number.doubleValue());
    }
    if (value instanceof Number number) {
      return add(number.longValue());
    }
    return add(value == null ? null : value.toString());
  }

  private ByteBuffer room(int more) {
    if (bytes.remaining() < more) {
      ByteBuffer larger = ByteBuffer.allocate(2 * (bytes.capacity() + more));
      bytes = larger.put(bytes.flip());
    }
    return bytes;
  }
}
