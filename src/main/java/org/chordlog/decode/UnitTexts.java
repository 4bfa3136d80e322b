package org.chordlog.decode;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** The texts that name a unit. */
final class UnitTexts {
  /** "µm" as ISO 8859-1 and as UTF-8. */
  private static final Map<String, LengthUnit> COMMON =
      Map.of(
          "mm", LengthUnit.MM,
          "MM", LengthUnit.MM,
          "um", LengthUnit.UM,
          "\u00B5m", LengthUnit.UM,
          "\u00C2\u00B5m", LengthUnit.UM,
          "in", LengthUnit.INCH,
          "IN", LengthUnit.INCH,
          "inch", LengthUnit.INCH,
          "\"", LengthUnit.INCH);

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
      byte[] text = texts[i];
      if (Arrays.equals(text, 0, text.length, bytes, from, to)) {
        return units[i];
      }
    }
    return null;
  }
}
