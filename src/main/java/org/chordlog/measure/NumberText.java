package org.chordlog.measure;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Numbers as people write them: with a decimal point or comma, and with either minus. The pages
 * have the same rule in {@code parts/units.js}.
 */
public final class NumberText {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?");
  private static final Pattern THOUSANDS =
      Pattern.compile("[-+]?[1-9]\\d{0,2},\\d{3}\\s*(?:mm|in|\")?");

  private NumberText() {}

  /** The number, or null where it is none that is finite. */
  public static @Nullable Double read(String text) {
    String number = pointed(text);
    if (!NUMBER.matcher(number).matches()) {
      return null;
    }
    double value = Double.parseDouble(number);
    return Double.isFinite(value) ? value : null;
  }

  private static String pointed(String text) {
    String number = Decimals.withHyphen(text.strip());
    return number.indexOf('.') < 0 ? number.replace(',', '.') : number;
  }

  /** What is wrong with a text that could not be read. */
  public static String problem(String text) {
    return NUMBER.matcher(pointed(text)).matches() ? "is too large" : "is not a number";
  }

  /**
   * Refuses a comma that could as well divide thousands, also before a unit of length: 1,800 is
   * 1800 to one reader and 1.8 to another.
   */
  public static void refuseThousands(String field, String text) {
    if (couldBeThousands(text)) {
      throw new BadInput(
          field, text, "could be a decimal comma or thousands", "a decimal point, or no comma");
    }
  }

  public static boolean couldBeThousands(String text) {
    return THOUSANDS.matcher(Decimals.withHyphen(text.strip())).matches();
  }
}
