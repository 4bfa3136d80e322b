package org.chordlog.decode;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** The texts that name a unit, upper or lower case. */
final class UnitTexts {
  /**
   * "µm" with the micro sign in ISO 8859-1, UTF-8 and code page 437, and with the Greek letter in
   * UTF-8.
   */
  static final Map<String, LengthUnit> COMMON =
      Map.ofEntries(
          Map.entry("mm", LengthUnit.MM),
          Map.entry("millimeter", LengthUnit.MM),
          Map.entry("millimetre", LengthUnit.MM),
          Map.entry("um", LengthUnit.UM),
          Map.entry("\u00B5m", LengthUnit.UM),
          Map.entry("\u00C2\u00B5m", LengthUnit.UM),
          Map.entry("\u00CE\u00BCm", LengthUnit.UM),
          Map.entry("\u00E6m", LengthUnit.UM),
          Map.entry("micron", LengthUnit.UM),
          Map.entry("microns", LengthUnit.UM),
          Map.entry("in", LengthUnit.INCH),
          Map.entry("inch", LengthUnit.INCH),
          Map.entry("inches", LengthUnit.INCH),
          Map.entry("\"", LengthUnit.INCH));

  private final byte[][] texts;
  private final LengthUnit[] units;

  UnitTexts(Map<String, LengthUnit> own) {
    Map<String, LengthUnit> all = new HashMap<>(COMMON);
    all.putAll(own);
    texts = all.keySet().stream().sorted().map(Bytes::of).toArray(byte[][]::new);
    units =
        Arrays.stream(texts)
            .map(t -> all.get(Bytes.text(t, 0, t.length)))
            .toArray(LengthUnit[]::new);
  }

  /** The unit of that text, or null. */
  @Nullable LengthUnit of(byte[] bytes, int from, int to) {
    for (int i = 0; i < texts.length; i++) {
      if (same(texts[i], bytes, from, to)) {
        return units[i];
      }
    }
    return null;
  }

  private static boolean same(byte[] text, byte[] bytes, int from, int to) {
    if (text.length != to - from) {
      return false;
    }
    for (int i = 0; i < text.length; i++) {
      if (text[i] != bytes[from + i] && !isOtherCase(text[i], bytes[from + i])) {
        return false;
      }
    }
    return true;
  }

  private static boolean isOtherCase(byte a, byte b) {
    int lower = a | 0x20;
    return (a ^ b) == 0x20 && lower >= 'a' && lower <= 'z';
  }
}
