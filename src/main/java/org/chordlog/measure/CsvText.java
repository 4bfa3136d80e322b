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

  /**
   * What divides cells: the first of semicolon, tab and comma that the first line holds, not in
   * quotes.
   */
  public static Optional<Character> separator(String csv) {
    String line = csv.lines().findFirst().orElse("").replaceAll("\"[^\"]*\"", "");
    return SEPARATORS.stream().filter(each -> line.indexOf(each) >= 0).findFirst();
  }

  private static boolean begins(String text, int at) {
    return text.length() > at && BEGINNINGS.indexOf(text.charAt(at)) >= 0;
  }
}
