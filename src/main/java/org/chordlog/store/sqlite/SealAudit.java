package org.chordlog.store.sqlite;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.Map;
import org.chordlog.store.sql.Hashes;
import org.chordlog.store.sql.RowBytes;

/**
 * Follows the chain of hashes from its first entry to its newest, and compares every sealed row
 * with its hash: names rows that were altered, removed or put in, and entries that do not follow
 * from the one before.
 */
final class SealAudit {
  private final Connection connection;
  private final SealFaults faults;
  private final RowBytes bytes = new RowBytes();
  private final Map<SealedTable, SealedKeys> sealed = new EnumMap<>(SealedTable.class);
  private final Map<SealedTable, PreparedStatement> rows = new EnumMap<>(SealedTable.class);

  private SealAudit(Connection connection, SealFaults faults) {
    this.connection = connection;
    this.faults = faults;
  }

  /** Within a transaction, so that all of it is of one moment. */
  static void run(Connection connection, SealFaults faults) throws SQLException {
    SealAudit audit = new SealAudit(connection, faults);
    try {
      for (SealedTable each : SealedTable.values()) {
        audit.sealed.put(each, new SealedKeys());
        audit.rows.put(each, connection.prepareStatement(each.selectOne()));
      }
      audit.chain();
      audit.added();
    } finally {
      for (PreparedStatement each : audit.rows.values()) {
        each.close();
      }
    }
  }

  private void chain() throws SQLException {
    SealEntry before = SealEntry.none(SealEntry.uuid(connection));
    try (PreparedStatement all = connection.prepareStatement(SealEntry.SELECT + "ORDER BY seq");
        ResultSet entries = all.executeQuery()) {
      while (entries.next()) {
        SealEntry entry = SealEntry.map(entries);
        follow(before, entry);
        records(entry);
        before = entry;
      }
    }
  }

  private void follow(SealEntry before, SealEntry entry) {
    if (entry.seq() != before.seq() + 1) {
      faults.add(
          "seal: entries %d to %d were removed from the chain", before.seq() + 1, entry.seq() - 1);
    } else if (!entry.follows(before)) {
      faults.add(
          "seal: entry %d does not follow from entry %d: one of them was altered or put in",
          entry.seq(), before.seq());
    }
  }

  private void records(SealEntry entry) throws SQLException {
    ByteBuffer body = ByteBuffer.wrap(entry.body());
    byte[] hash = new byte[Hashes.BYTES];
    while (body.remaining() >= SealEntry.RECORD_BYTES) {
      int code = body.get();
      long key = body.getLong();
      body.get(hash);
      record(entry.seq(), code, key, hash);
    }
    if (body.hasRemaining()) {
      faults.add("seal: entry %d was altered: a part of a record is left over", entry.seq());
    }
  }

  private void record(long seq, int code, long key, byte[] hash) throws SQLException {
    SealedTable table = SealedTable.find(code);
    if (table == null) {
      faults.add("seal: entry %d was altered: it names a table %d", seq, code);
      return;
    }
    if (!keys(table).add(key)) {
      faults.add("seal: %s is sealed twice, the second time in entry %d", table.named(key), seq);
    }
    compare(table, key, seq, hash);
  }

  private void compare(SealedTable table, long key, long seq, byte[] hash) throws SQLException {
    PreparedStatement one = rows.get(table);
    if (one == null) {
      return;
    }
    one.setLong(1, key);
    try (ResultSet row = one.executeQuery()) {
      if (!row.next()) {
        faults.add("seal: %s was removed (sealed in entry %d)", table.named(key), seq);
      } else if (!MessageDigest.isEqual(hash, bytes.hash(row))) {
        faults.add("seal: %s was altered after it was sealed in entry %d", table.named(key), seq);
      }
    }
  }

  /** Rows that no entry names. */
  private void added() throws SQLException {
    for (SealedTable table : SealedTable.values()) {
      try (PreparedStatement all = connection.prepareStatement(table.keys());
          ResultSet found = all.executeQuery()) {
        while (found.next()) {
          if (!keys(table).contains(found.getLong(1))) {
            faults.add(
                "seal: %s was put in: no entry of the chain names it",
                table.named(found.getLong(1)));
          }
        }
      }
    }
  }

  private SealedKeys keys(SealedTable table) {
    return sealed.computeIfAbsent(table, each -> new SealedKeys());
  }
}
