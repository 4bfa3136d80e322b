package org.chordlog.decode;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.chordlog.measure.BadInput;

/** Texts that stand for bytes, one character a byte. */
final class Bytes {
  private Bytes() {}

  static byte[] of(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  static String text(byte[] bytes, int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }

  static byte[] copy(byte[] bytes, int from, int to) {
    return Arrays.copyOfRange(bytes, from, to);
  }

  /** The text, or an empty one for null; refuses what is longer or no byte. */
  static String checked(String field, String text, int most) {
    if (text == null) {
      return "";
    }
    if (text.length() > most || text.chars().anyMatch(c -> c > 0xFF)) {
      throw new BadInput(
          field, text, "is not text made of bytes", "at most " + most + " characters up to U+00FF");
    }
    return text;
  }
}
