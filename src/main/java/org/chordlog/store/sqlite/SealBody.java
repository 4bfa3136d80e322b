package org.chordlog.store.sqlite;

import java.nio.ByteBuffer;

/** The records of an entry that is being made. */
final class SealBody {
  private static final int FIRST_RECORDS = 64;

  private ByteBuffer bytes = ByteBuffer.allocate(FIRST_RECORDS * SealEntry.RECORD_BYTES);

  void add(SealedTable table, long key, byte[] rowHash) {
    if (!bytes.hasRemaining()) {
      bytes = ByteBuffer.allocate(2 * bytes.capacity()).put(bytes.flip());
    }
    bytes.put((byte) table.code).putLong(key).put(rowHash);
  }

  int records() {
    return bytes.position() / SealEntry.RECORD_BYTES;
  }

  /** What was added; begins anew. */
  byte[] take() {
    byte[] taken = new byte[bytes.position()];
    bytes.flip().get(taken);
    bytes.clear();
    return taken;
  }
}
