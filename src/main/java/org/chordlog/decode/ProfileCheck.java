package org.chordlog.decode;

import org.chordlog.measure.BadInput;

/** Refuses profiles whose frames could not be told apart. */
final class ProfileCheck {
  private ProfileCheck() {}

  static void framing(Framing framing, String pattern, NumberForm number, Checksum checksum) {
    boolean none = checksum.kind() == Checksum.Kind.NONE;
    if (framing.kind() == Framing.Kind.FIXED_LENGTH
        && none
        && pattern.isEmpty()
        && framing.idleMs() == 0
        && number.sign() != NumberForm.Sign.ALWAYS) {
      throw new BadInput(
          "framing",
          "FIXED_LENGTH",
          "has nothing that tells where a frame begins",
          "number.sign ALWAYS, a pattern, a checksum, or framing.idleMs");
    }
    if (!none) {
      place(framing, checksum);
    }
  }

  private static void place(Framing framing, Checksum checksum) {
    boolean marked = framing.kind() == Framing.Kind.MARKERS;
    if (checksum.afterEnd() && !marked) {
      throw new BadInput("checksum.afterEnd", true, "needs an end marker", "framing MARKERS");
    }
    String closing = marked ? framing.end() : framing.terminator();
    boolean closed = marked ? !checksum.afterEnd() : framing.kind() == Framing.Kind.TERMINATOR;
    if (closed && checksum.encoding() == Checksum.Encoding.RAW && closing.length() < 2) {
      throw new BadInput(
          "checksum.encoding",
          "RAW",
          "may look like the end of the frame",
          "HEX, afterEnd, or a terminator or end of two bytes");
    }
  }
}
