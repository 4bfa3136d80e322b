package org.chordlog.account;

/** A name with a password, PIN or code that do not belong together, or a badge nobody has. */
public final class WrongSecret extends RuntimeException {
  private static final long serialVersionUID = 1L;

  WrongSecret(String message) {
    super(message, null, false, false);
  }
}
