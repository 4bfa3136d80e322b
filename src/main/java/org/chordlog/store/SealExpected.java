package org.chordlog.store;

import java.util.List;
import java.util.Locale;
import org.chordlog.measure.BadInput;

/**
 * What whoever audits knows from elsewhere: entries of the chain of hashes written down or printed
 * earlier, and the fingerprint of the key that signs checkpoints (empty: any).
 */
public record SealExpected(List<Anchor> anchors, String keyFingerprint) {
  public static final SealExpected NOTHING = new SealExpected(List.of(), "");

  private static final String FINGERPRINT = "[0-9a-f]{16}";

  public SealExpected {
    anchors = List.copyOf(anchors);
    keyFingerprint = keyFingerprint.toLowerCase(Locale.ROOT);
    if (!keyFingerprint.isEmpty() && !keyFingerprint.matches(FINGERPRINT)) {
      throw new BadInput("--key", keyFingerprint, "is not a fingerprint", "16 hexadecimal digits");
    }
  }

  /** An entry's sequence and the SHA-256 it had, at least its first 16 hexadecimal digits. */
  public record Anchor(long seq, String hash) {
    private static final String FORM = "\\d{1,18}:[0-9a-fA-F]{16,64}";

    /** From SEQ:HASH. */
    public static Anchor of(String text) {
      if (!text.matches(FORM)) {
        throw new BadInput(
            "--anchor", text, "is not an anchor", "SEQ:HASH as a report or export has it");
      }
      int colon = text.indexOf(':');
      return new Anchor(
          Long.parseLong(text.substring(0, colon)),
          text.substring(colon + 1).toLowerCase(Locale.ROOT));
    }
  }
}
