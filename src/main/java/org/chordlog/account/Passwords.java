package org.chordlog.account;

import com.password4j.Argon2Function;
import com.password4j.types.Argon2;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;

/**
 * Passwords and PINs as Argon2id hashes (RFC 9106) in the PHC string form. m = 12 MiB, t = 3, p = 1
 * is the smallest that OWASP ASVS 5.0, appendix C, approves. One is made at a time, since each
 * takes its 12 MiB of heap.
 */
final class Passwords {
  private static final Argon2Function FUNCTION =
      Argon2Function.getInstance(12_288, 3, 1, 32, Argon2.ID, Argon2Function.ARGON2_VERSION_13);
  private static final int SALT_BYTES = 16;
  private static final int LEAST = 8;
  private static final int MOST = 256;
  private static final int WAITING = 8;
  private static final int PATIENCE_SECONDS = 10;

  /** Beginnings that the list of known passwords does not have. */
  private static final List<String> COMMON =
      List.of("passwort", "qwertzui", "chordlog", "administrator", "12345678", "password");

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final Semaphore TURN = new Semaphore(1, true);
  private static final String NOBODYS = hash("nobody's password");

  private Passwords() {}

  /** {@link BadInput} for one that is too short, too long or among the first to be tried. */
  static void require(String password, String name) {
    String allowed = LEAST + " to " + MOST + " characters; several words are easy to remember";
    String small = password.toLowerCase(Locale.ROOT);
    if (password.length() < LEAST || password.length() > MOST) {
      throw new BadInput("password", "", "has " + password.length() + " characters", allowed);
    }
    boolean oneLetter = password.chars().distinct().count() < 4;
    boolean common = COMMON.stream().anyMatch(small::startsWith) || KnownPasswords.have(small);
    if (oneLetter || common || small.contains(small(name))) {
      throw new BadInput("password", "", "is among the first that anyone would try", allowed);
    }
  }

  private static String small(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  static String hash(String password) {
    byte[] salt = new byte[SALT_BYTES];
    RANDOM.nextBytes(salt);
    return inTurn(() -> FUNCTION.hash(utf8(password), salt).getResult());
  }

  /** Takes as long for nobody's password, so that no answer tells which names there are. */
  static boolean same(String password, String hash) {
    String compared = hash.isEmpty() ? NOBODYS : hash;
    boolean same =
        inTurn(() -> Argon2Function.getInstanceFromHash(compared).check(password, compared));
    return same && !hash.isEmpty();
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static <T> T inTurn(Supplier<T> work) {
    try {
      if (TURN.getQueueLength() >= WAITING
          || !TURN.tryAcquire(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        throw new TryLater(1, "Many people are signing in. Try again in a moment.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new TryLater(1, "The service is stopping.");
    }
    try {
      return work.get();
    } finally {
      TURN.release();
    }
  }
}
