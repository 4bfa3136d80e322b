package org.chordlog.measure;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Text cells of CSV files as spreadsheets may read them: one that would begin a formula gets an
 * apostrophe before it, which they show as text (OWASP, CSV injection). Numbers stay as they are.
 */
public final class CsvText {
  private static final String BEGINNINGS = "=+-@\t\r";
  private static final String NUMBER = "[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?";
  private static final List<Character> SEPARATORS = List.of(';', '\t', ',');
  private static final char MARK = '\'';

  private CsvText() {}

  /** Of a cell; what is no text, and a text that is a number, is given back as it is. */
  public static @Nullable Object harmless(@Nullable Object cell) {
    return cell instanceof String text && begins(text, 0) && !text.matches(NUMBER)
        ? MARK + text
        : cell;
  }

  /** The text that was made harmless. */
  public static String read(String cell) {
    return !cell.isEmpty() && cell.charAt(0) == MARK && begins(cell, 1) ? cell.substring(1) : cell;
  }

  /** What divides cells: the first of semicolon, tab and comma that the first line holds. */
  public static Optional<Character> separator(String csv) {
    String line = csv.lines().findFirst().orElse("");
    return SEPARATORS.stream().filter(each -> line.indexOf(each) >= 0).findFirst();
  }

  /**
   * A number's cell as it is. With commas between cells one in quotes may be a decimal comma or
   * divide thousands, which is refused; with semicolons or tabs it is a decimal one.
   */
  public static String numeral(String place, String cell, char separator) {
    if (separator == ',' && NumberText.couldBeThousands(cell)) {
      throw new BadInput(
          place,
          cell,
          "could be a decimal comma or thousands",
          "a decimal point, or no comma; with semicolons between cells it is a decimal comma");
    }
    return cell;
  }

  private static boolean begins(String text, int at) {
    return text.length() > at && BEGINNINGS.indexOf(text.charAt(at)) >= 0;
  }
}
