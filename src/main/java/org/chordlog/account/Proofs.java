package org.chordlog.account;

import java.util.Locale;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Accounts.Person;
import org.chordlog.store.Accounts.Secrets;

/** What people prove to be themselves by, as it is stored: hashes only. */
final class Proofs {
  private Proofs() {}

  /** A code takes the place of the password until one is chosen by it. */
  static Person coded(Person before, String code, long untilMicros) {
    Secrets had = before.secrets();
    String hash = Random.hash(plain(code));
    return with(before, new Secrets("", had.pin(), had.badge(), hash, untilMicros, had.identity()));
  }

  /** Whether that is the code, however it is spaced and whatever its capitals. */
  static boolean isCode(String code, Secrets secrets) {
    return Random.same(plain(code), secrets.code());
  }

  private static String plain(String code) {
    return code.replace("-", "").replace(" ", "").toUpperCase(Locale.ROOT);
  }

  /** A password takes the place of the code. */
  static Person passed(Person before, String hash) {
    Secrets had = before.secrets();
    return with(before, new Secrets(hash, had.pin(), had.badge(), "", 0, had.identity()));
  }

  /** With the hashes of that PIN and badge; none where empty. */
  static Person identified(Person before, String pin, String badge) {
    Secrets had = before.secrets();
    return with(
        before,
        new Secrets(had.password(), pin, badge, had.code(), had.codeUntilMicros(), had.identity()));
  }

  private static Person with(Person person, Secrets secrets) {
    return new Person(person.id(), person.name(), person.roles(), person.disabled(), secrets);
  }

  /** The hash of a PIN that may be used; empty for none. */
  static String newPin(String pin) {
    if (!pin.isEmpty() && !pin.matches("[0-9]{6}")) {
      throw new BadInput("pin", "", "is not a PIN", "6 digits");
    }
    if (pin.matches("(\\d)\\1{5}|012345|123456|654321")) {
      throw new BadInput("pin", "", "is among the first that anyone would try", "6 other digits");
    }
    return pin.isEmpty() ? "" : Passwords.hash(pin);
  }

  /** The hash of what a badge may say; empty for none. */
  static String newBadge(String badge) {
    if (!badge.isEmpty() && !badge.strip().matches("[!-~]{6,100}")) {
      throw new BadInput("badge", "", "is not what a badge says", "6 to 100 letters and digits");
    }
    return badge.isEmpty() ? "" : badge(badge);
  }

  static String badge(String badge) {
    return Random.hash("badge " + badge.strip());
  }
}
