package org.chordlog.cli.correction;

import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Numbers given as text, with decimal point or comma. */
final class Numbers {
  private Numbers() {}

  static double of(String field, String text) {
    Double value = CsvColumns.number(text);
    if (value == null) {
      throw new BadInput(field, text, "is not a number", "a number, decimal point or comma");
    }
    return value;
  }

  static @Nullable Double given(String field, @Nullable String text) {
    return text == null ? null : (Double) of(field, text);
  }
}
