package org.chordlog.measure;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final Pattern SAID =
      Pattern.compile("\uFEFF?\"?sep=([;,\t])", Pattern.CASE_INSENSITIVE);

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

  /** Without what is not seen around it; a spreadsheet leaves spaces there that don't break. */
  public static String trimmed(String cell) {
    int from = 0;
    int to = cell.length();
    while (from < to && isUnseen(cell.charAt(from))) {
      from++;
    }
    while (from < to && isUnseen(cell.charAt(to - 1))) {
      to--;
    }
    return cell.substring(from, to);
  }

  private static boolean isUnseen(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u200B' || c == '\uFEFF';
  }

  /**
   * What divides cells: what a first line {@code sep=;} of a spreadsheet says, else the first of
   * semicolon, tab and comma that the first line with anything on it holds, not in quotes.
   */
  public static Optional<Character> separator(String csv) {
    Matcher said = SAID.matcher(csv);
    if (said.lookingAt()) {
      return Optional.of(said.group(1).charAt(0));
    }
    String first = csv.lines().filter(each -> !each.isBlank()).findFirst().orElse("");
    String line = first.replaceAll("\"[^\"]*\"", "");
    return SEPARATORS.stream().filter(each -> line.indexOf(each) >= 0).findFirst();
  }

  /**
   * The text without a byte order mark, and with nothing on a first line that only says what
   * divides cells; the lines keep their numbers.
   */
  public static String table(String csv) {
    String text = csv.startsWith(BYTE_ORDER_MARK) ? csv.substring(1) : csv;
    Matcher said = SAID.matcher(text);
    return said.lookingAt() ? text.substring(said.end(1)).replaceFirst("^[\";,\t ]*", "") : text;
  }

  private static boolean begins(String text, int at) {
    return text.length() > at && BEGINNINGS.indexOf(text.charAt(at)) >= 0;
  }
}
