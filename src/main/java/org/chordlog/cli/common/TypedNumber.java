package org.chordlog.cli.common;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.NumberText;
import org.jspecify.annotations.Nullable;

/** A number given as text, with decimal point or comma; {@link BadInput} where it is none. */
public final class TypedNumber {
  private TypedNumber() {}

  /** As a person typed it: a comma that could as well divide thousands is refused. */
  public static double of(String field, String text) {
    NumberText.refuseThousands(field, text);
    return cell(field, text);
  }

  /** A cell of a file, where a comma is a decimal one. */
  public static double cell(String field, String text) {
    Double value = NumberText.read(text);
    if (value == null) {
      throw new BadInput(field, text, NumberText.problem(text), "a number, decimal point or comma");
    }
    return value;
  }

  /** As typed; null where nothing was. */
  public static @Nullable Double given(String field, @Nullable String text) {
    return text == null ? null : (Double) of(field, text);
  }
}
