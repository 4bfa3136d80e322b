package org.chordlog.notify.webhook;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.chordlog.measure.BadInput;
import org.chordlog.trust.SecretFile;

/**
 * Signatures of one message (Standard Webhooks 1.0.0, "Signature scheme"): HMAC-SHA-256 over id,
 * time stamp and body, one for each secret, so that the receiver may know the old or the new one.
 */
public final class Signature {
  private static final String PREFIX = "whsec_";
  private static final String ALGORITHM = "HmacSHA256";
  private static final int LEAST_BYTES = 24;
  private static final int MOST_BYTES = 64;

  private Signature() {}

  /** The header's value; {@code seconds} since 1970. */
  static String of(List<SecretFile> secrets, String id, long seconds, String body) {
    String signed = id + "." + seconds + "." + body;
    return secrets.stream().map(each -> of(key(each), signed)).collect(Collectors.joining(" "));
  }

  private static String of(byte[] key, String signed) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      byte[] sum = mac.doFinal(signed.getBytes(StandardCharsets.UTF_8));
      return "v1," + Base64.getEncoder().encodeToString(sum);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java has no " + ALGORITHM, e);
    }
  }

  /** The key in a file: {@code whsec_} and the key in base64, 24 to 64 bytes. */
  public static byte[] key(SecretFile file) {
    String text = file.read();
    try {
      byte[] key =
          Base64.getDecoder()
              .decode(text.startsWith(PREFIX) ? text.substring(PREFIX.length()) : text);
      if (key.length >= LEAST_BYTES && key.length <= MOST_BYTES) {
        return key;
      }
    } catch (IllegalArgumentException e) {
      // said below
    }
    throw new BadInput(
        file.setting(),
        file.file(),
        "holds no secret of a webhook",
        PREFIX
            + " and "
            + LEAST_BYTES
            + " to "
            + MOST_BYTES
            + " random bytes in base64, as"
            + " (printf whsec_; openssl rand -base64 32) > FILE makes");
  }
}
