package org.chordlog.store.sql;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256, which every Java has. */
public final class Hashes {
  public static final int BYTES = 32;

  private Hashes() {}

  public static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
