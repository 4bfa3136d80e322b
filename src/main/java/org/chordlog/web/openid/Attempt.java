package org.chordlog.web.openid;

import com.nimbusds.oauth2.sdk.id.State;
import com.nimbusds.oauth2.sdk.pkce.CodeVerifier;
import com.nimbusds.openid.connect.sdk.Nonce;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;

/**
 * One attempt to sign in, known by a secret that only the browser which began it has, in a cookie:
 * what goes to the provider (state, nonce, the challenge of RFC 7636) follows from the secret, so
 * that an answer which another browser asked for does not fit.
 */
public record Attempt(String secret) {
  private static final int BYTES = 32;
  private static final String FORM = "[A-Za-z0-9_-]{43}";
  private static final SecureRandom RANDOM = new SecureRandom();

  /** A new one, with a secret of 256 bits by chance. */
  public static Attempt begun() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return new Attempt(text(bytes));
  }

  /** None where that is no secret of an attempt. */
  public static Optional<Attempt> of(String secret) {
    return secret.matches(FORM) ? Optional.of(new Attempt(secret)) : Optional.empty();
  }

  State state() {
    return new State(derived("state"));
  }

  Nonce nonce() {
    return new Nonce(derived("nonce"));
  }

  CodeVerifier verifier() {
    return new CodeVerifier(derived("verifier"));
  }

  private String derived(String what) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return text(sha.digest((what + " " + secret).getBytes(StandardCharsets.US_ASCII)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** Without the secret. */
  @Override
  public String toString() {
    return "an attempt to sign in";
  }
}
