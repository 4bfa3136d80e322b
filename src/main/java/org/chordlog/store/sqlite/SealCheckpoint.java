package org.chordlog.store.sqlite;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import java.util.List;
import org.chordlog.store.sql.Hashes;
import org.jspecify.annotations.Nullable;

/**
 * One line of the file of checkpoints: what the chain of hashes had come to, signed. Words divided
 * by blanks: {@code chordlog-seal-1}, kind, UUID of the database, sequence and hash of the newest
 * entry, time in UTC microseconds, version of the program, identification of its measuring part,
 * SHA-256 of the line before, public key, signature over all before it.
 */
record SealCheckpoint(
    Kind kind, String uuid, Tip tip, Made made, String lineBefore, String key, String line) {
  static final String FORM = "chordlog-seal-1";
  private static final int WORDS = 11;

  /** Why the line was written. */
  enum Kind {
    /** The service began, with the database as it was. */
    START,
    /** An hour, or enough records. */
    RUN,
    STOP,
    /** A backup took the place of the database by the command for it. */
    RESTORE,
    /** The service began with a new, empty database. */
    NEW
  }

  /** The newest entry. */
  record Tip(long seq, String hash) {}

  /** When, and by which program. */
  record Made(long atMicros, String version, String measuringPart) {}

  static SealCheckpoint sign(
      Kind kind, String uuid, Tip tip, Made made, String lineBefore, SealKey key)
      throws GeneralSecurityException {
    String said =
        String.join(
            " ",
            FORM,
            kind.name(),
            uuid,
            String.valueOf(tip.seq()),
            tip.hash(),
            String.valueOf(made.atMicros()),
            made.version(),
            made.measuringPart(),
            lineBefore,
            key.shown());
    String line = said + " " + key.sign(said);
    return new SealCheckpoint(kind, uuid, tip, made, lineBefore, key.shown(), line);
  }

  /** Null for a line that no checkpoint looks like. */
  static @Nullable SealCheckpoint read(String line) {
    List<String> words = List.of(line.split(" ", -1));
    if (words.size() != WORDS || !words.get(0).equals(FORM)) {
      return null;
    }
    try {
      return new SealCheckpoint(
          Kind.valueOf(words.get(1)),
          words.get(2),
          new Tip(Long.parseLong(words.get(3)), words.get(4)),
          new Made(Long.parseLong(words.get(5)), words.get(6), words.get(7)),
          words.get(8),
          words.get(9),
          line);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  boolean signatureHolds() {
    int last = line.lastIndexOf(' ');
    return SealKey.verifies(key, line.substring(0, last), line.substring(last + 1));
  }

  /** What the next line names. */
  static String hash(String line) {
    return HexFormat.of().formatHex(Hashes.sha256().digest(line.getBytes(StandardCharsets.UTF_8)));
  }
}
