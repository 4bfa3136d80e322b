package org.chordlog.account;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Secrets that are made by chance, and the hash that is stored in their place. */
final class Random {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int BYTES = 32;

  /** Without 0, 1, I, L, O and U, which are mistaken for others or make words. */
  private static final String LETTERS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

  private static final int CODE_LETTERS = 16;

  private Random() {}

  static String random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** To be typed by a person, in groups of four; 78 bits. */
  static String code() {
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < CODE_LETTERS; i++) {
      code.append(i > 0 && i % 4 == 0 ? "-" : "");
      code.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
    }
    return code.toString();
  }

  /** SHA-256, which is enough for what nobody can guess. */
  static String hash(String secret) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(secret.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  static boolean same(String secret, String hash) {
    return MessageDigest.isEqual(
        hash(secret).getBytes(StandardCharsets.US_ASCII), hash.getBytes(StandardCharsets.US_ASCII));
  }
}
