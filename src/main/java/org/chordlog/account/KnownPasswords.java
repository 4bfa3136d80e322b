package org.chordlog.account;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Objects;

/**
 * The 11,611 passwords of 8 characters or more among the 30,000 most frequent ones that became
 * known, by the list of zxcvbn 4.4.2 (MIT licence). Each is there as the first five bytes of the
 * SHA-256 of its small letters, in ascending order; one in a hundred million other passwords is
 * refused for no reason.
 */
final class KnownPasswords {
  static final int BYTES = 5;
  private static final String FILE = "known-passwords.bin";
  private static final byte[] SORTED = read();

  private KnownPasswords() {}

  private static byte[] read() {
    try (InputStream in = KnownPasswords.class.getResourceAsStream(FILE)) {
      return Objects.requireNonNull(in, FILE).readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether that is one of them; {@code small}: in small letters. */
  static boolean have(String small) {
    byte[] wanted = mark(small);
    int from = 0;
    int to = SORTED.length / BYTES;
    while (from < to) {
      int middle = (from + to) >>> 1;
      int compared = compare(middle, wanted);
      if (compared == 0) {
        return true;
      }
      from = compared < 0 ? middle + 1 : from;
      to = compared < 0 ? to : middle;
    }
    return false;
  }

  private static int compare(int row, byte[] wanted) {
    int at = row * BYTES;
    return Arrays.compareUnsigned(SORTED, at, at + BYTES, wanted, 0, BYTES);
  }

  static byte[] mark(String small) {
    try {
      byte[] sha =
          MessageDigest.getInstance("SHA-256").digest(small.getBytes(StandardCharsets.UTF_8));
      return Arrays.copyOf(sha, BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
