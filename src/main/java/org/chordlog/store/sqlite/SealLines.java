package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.chordlog.store.SealExpected;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/**
 * Compares the chain of hashes with the signed checkpoints and with entries known from elsewhere.
 * Only checkpoints since the newest restore vouch for the database of now; one from before may be
 * of records that the restore took back, which is a note.
 */
final class SealLines {
  private final Connection connection;
  private final SealFaults faults;
  private final List<String> notes = new ArrayList<>();
  private final String uuid;
  private final SealEntry newest;
  private String key = "";

  SealLines(Connection connection, SealFaults faults) throws SQLException {
    this.connection = connection;
    this.faults = faults;
    this.uuid = SealEntry.uuid(connection);
    this.newest = SealEntry.newest(connection);
  }

  List<String> notes() {
    return notes;
  }

  /** Fingerprint of the key of the newest line; empty without lines. */
  String keyFingerprint() {
    return key;
  }

  SealEntry newest() {
    return newest;
  }

  void check(List<String> lines, String expectedKey) throws SQLException {
    List<SealCheckpoint> read = new ArrayList<>();
    String before = SealFile.NO_LINE;
    for (int i = 0; i < lines.size(); i++) {
      SealCheckpoint checkpoint = line(i + 1, lines.get(i), before, expectedKey);
      if (checkpoint != null) {
        read.add(checkpoint);
      }
      before = SealCheckpoint.hash(lines.get(i));
    }
    if (read.isEmpty()) {
      notes.add(
          "seal: there are no signed checkpoints: that the newest records were cut off is shown"
              + " only by an entry that was noted elsewhere (--anchor)");
    }
    compare(read);
  }

  private @Nullable SealCheckpoint line(int number, String text, String before, String expected) {
    SealCheckpoint checkpoint = SealCheckpoint.read(text);
    if (checkpoint == null || !checkpoint.signatureHolds()) {
      faults.add("seal: checkpoint line %d was altered or is not whole", number);
      return null;
    }
    if (!checkpoint.lineBefore().equals(before)) {
      faults.add("seal: checkpoint lines before line %d were altered or removed", number);
    }
    key(number, SealKey.fingerprint(checkpoint.key()), expected);
    return checkpoint;
  }

  private void key(int number, String fingerprint, String expected) {
    if (!expected.isEmpty() && !fingerprint.equals(expected)) {
      faults.add(
          "seal: checkpoint line %d is signed by the key %s, not by %s",
          number, fingerprint, expected);
    } else if (!key.isEmpty() && !fingerprint.equals(key)) {
      faults.add(
          "seal: from checkpoint line %d on another key signs: %s, before it %s",
          number, fingerprint, key);
    }
    key = fingerprint;
  }

  private void compare(List<SealCheckpoint> read) throws SQLException {
    int from = since(read);
    for (int i = 0; i < from; i++) {
      if (read.get(i).kind() == SealCheckpoint.Kind.RESTORE) {
        notes.add(told(read.get(i)));
      }
    }
    if (from < read.size() && begins(read.get(from))) {
      notes.add(told(read.get(from)));
      shared(read.subList(0, from), read.get(from));
    }
    for (SealCheckpoint each : read.subList(from, read.size())) {
      compare(each);
    }
  }

  private static boolean begins(SealCheckpoint checkpoint) {
    return checkpoint.kind() == SealCheckpoint.Kind.RESTORE
        || checkpoint.kind() == SealCheckpoint.Kind.NEW;
  }

  private static int since(List<SealCheckpoint> read) {
    for (int i = read.size() - 1; i >= 0; i--) {
      if (begins(read.get(i))) {
        return i;
      }
    }
    return 0;
  }

  private static String told(SealCheckpoint at) {
    String what =
        at.kind() == SealCheckpoint.Kind.RESTORE
            ? "a backup was restored by command"
            : "this database was begun";
    return "seal: %s on %s, at entry %s".formatted(what, time(at), at.tip().seq());
  }

  /** A backup shares its beginning with what was vouched for before it was restored. */
  private void shared(List<SealCheckpoint> before, SealCheckpoint restore) throws SQLException {
    int known = 0;
    int same = 0;
    for (SealCheckpoint each : before) {
      if (isOfBoth(each, restore)) {
        known++;
        same += holds(each) ? 1 : 0;
      }
    }
    if (known > 0 && same == 0) {
      faults.add(
          "seal: what was restored on %s has another history than every checkpoint before it",
          time(restore));
    } else if (same < known) {
      notes.add(
          "seal: %s checkpoints before the restore are of records that it does not have"
              .formatted(known - same));
    }
  }

  /** Of the same database, about entries that the restored one has too. */
  private boolean isOfBoth(SealCheckpoint before, SealCheckpoint restore) {
    long seq = before.tip().seq();
    return before.uuid().equals(uuid) && seq > 0 && seq <= restore.tip().seq();
  }

  private boolean holds(SealCheckpoint checkpoint) throws SQLException {
    return hash(checkpoint.tip().seq()).equals(checkpoint.tip().hash());
  }

  private void compare(SealCheckpoint checkpoint) throws SQLException {
    long seq = checkpoint.tip().seq();
    if (!checkpoint.uuid().equals(uuid)) {
      if (seq > 0) {
        faults.add(
            "seal: another database took the place of %s of the checkpoint of %s, without a"
                + " restore by command",
            checkpoint.uuid(), time(checkpoint));
      }
    } else if (seq > newest.seq()) {
      faults.add(
          "seal: entries %d to %d, for which the checkpoint of %s vouches, are gone: the end was cut"
              + " off, or an older file put in place without a restore by command",
          newest.seq() + 1, seq, time(checkpoint));
    } else if (!holds(checkpoint)) {
      faults.add(
          "seal: entry %d is not the one for which the checkpoint of %s vouches: the chain was made"
              + " anew",
          seq, time(checkpoint));
    }
  }

  void check(SealExpected.Anchor anchor) throws SQLException {
    if (anchor.seq() > newest.seq()) {
      faults.add(
          "seal: the chain ends at entry %d, before the anchor %d: its end was cut off, or this is"
              + " an older file",
          newest.seq(), anchor.seq());
    } else if (!hash(anchor.seq()).startsWith(anchor.hash())) {
      faults.add(
          "seal: entry %d has not the hash of the anchor: the chain was made anew, or the anchor is"
              + " of another database",
          anchor.seq());
    }
  }

  private String hash(long seq) throws SQLException {
    if (seq == 0) {
      return SealEntry.none(uuid).hashText();
    }
    return Sql.first(
            connection,
            "SELECT hash FROM seal WHERE seq = ?",
            row -> HexFormat.of().formatHex(row.getBytes(1)),
            seq)
        .orElse("");
  }

  private static String time(SealCheckpoint checkpoint) {
    return Instant.EPOCH
        .plusNanos(1_000 * checkpoint.made().atMicros())
        .truncatedTo(ChronoUnit.SECONDS)
        .toString();
  }
}
