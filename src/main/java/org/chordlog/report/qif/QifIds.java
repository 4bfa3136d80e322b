package org.chordlog.report.qif;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.UUID;

/** Ids within a document by arithmetic from its counts, and its identifiers in the world. */
final class QifIds {
  static final long GEOMETRY_STANDARD = 1;
  static final long DECISION_STANDARD = 2;
  static final long SOFTWARE = 3;
  static final long ALGORITHM = 4;
  static final long DEFINITION = 5;
  static final long NOMINAL = 6;
  static final long CAPABILITY_PLAN = 7;
  static final long CAPABILITY = 8;
  private static final long FIRST = 9;

  /** Made once at random, the name space of this program's identifiers. */
  private static final UUID NAME_SPACE = UUID.fromString("6d0c6c1e-6a0f-4d0c-9a4e-2f7f5c1b8e35");

  private final String name;
  private final long device;
  private final long item;
  private final long component;
  private final long group;
  private final long measurement;
  private final long issue;
  private final long study;
  private final long most;

  QifIds(QifJob from, QifCount count) {
    name = from.databaseId() + "/" + from.job().id() + "/" + count.lastReadingId();
    long issues =
        count.readings() == 0
            ? 0
            : from.capabilities().stream().mapToLong(each -> each.issues().size()).sum();
    device = FIRST;
    item = device + count.devices().all().size();
    component = item + count.positions().names().size();
    group = component + count.pieces().count();
    measurement = group + count.pieces().groups();
    issue = measurement + count.readings();
    study = issue + issues;
    most = study + from.studies().stream().filter(StudySection::has).count() - 1;
  }

  long device(int number) {
    return device + number;
  }

  long item(int position) {
    return item + position;
  }

  long component(int piece) {
    return component + piece;
  }

  long group(int number) {
    return group + number;
  }

  long measurement(int ordinal) {
    return measurement + ordinal;
  }

  long issue(int number) {
    return issue + number;
  }

  long study(int number) {
    return study + number;
  }

  /** The largest id. */
  long most() {
    return most;
  }

  UUID document() {
    return uuid(name);
  }

  UUID results(int groupNumber) {
    return uuid(name + "/results/" + groupNumber);
  }

  /** Version 5, by SHA-1 of the name (RFC 9562, 5.5). */
  private static UUID uuid(String name) {
    byte[] hash = sha1(NAME_SPACE, name);
    long high = 0;
    long low = 0;
    for (int i = 0; i < 8; i++) {
      high = (high << 8) | Byte.toUnsignedLong(hash[i]);
      low = (low << 8) | Byte.toUnsignedLong(hash[i + 8]);
    }
    high = (high & ~0xF000L) | 0x5000L;
    low = (low & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
    return new UUID(high, low);
  }

  private static byte[] sha1(UUID space, String name) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-1");
      digest.update(bytes(space.getMostSignificantBits()));
      digest.update(bytes(space.getLeastSignificantBits()));
      return digest.digest(name.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static byte[] bytes(long value) {
    byte[] bytes = new byte[8];
    for (int i = 0; i < 8; i++) {
      bytes[i] = (byte) (value >>> (56 - 8 * i));
    }
    return bytes;
  }
}
