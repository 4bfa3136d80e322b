package org.chordlog.measure;

import java.util.Collection;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a CSV file writes its numbers, by all of its cells. A single mark before three digits (1,800
 * or 1.800) may be a decimal one or divide thousands, as spreadsheets write what they show so: it
 * is taken for a decimal one where other cells of the file have that mark for decimals, or, without
 * such cells, where it can't be confused with what divides the cells.
 */
public final class CsvNumerals {
  private static final String UNIT = "\\s*(?:mm|in|\")?";
  private static final Pattern DOUBTFUL = Pattern.compile("[-+]?[1-9]\\d{0,2}([.,])\\d{3}" + UNIT);
  private static final Pattern DIVIDED =
      Pattern.compile(
          "[-+]?\\d{1,3}(?:([.,' \u00A0\u2009\u202F\u2019])\\d{3})+(?:([.,])\\d+)?" + UNIT);
  private static final Pattern DECIMAL = Pattern.compile("[-+]?\\d*([.,])\\d*" + UNIT);

  private final char separator;
  private boolean points;
  private boolean commas;

  /** {@code separator}: what divides the cells, of which all are given. */
  public CsvNumerals(char separator, Collection<String> cells) {
    this.separator = separator;
    cells.forEach(this::learn);
  }

  private void learn(String cell) {
    String text = plain(cell);
    Matcher decimal = DECIMAL.matcher(text);
    if (decimal.matches() && !DOUBTFUL.matcher(text).matches()) {
      learn(decimal.group(1).charAt(0));
      return;
    }
    Matcher divided = DIVIDED.matcher(text);
    if (divided.matches() && divided.group(2) != null) {
      learn(divided.group(2).charAt(0));
    }
  }

  private void learn(char mark) {
    points |= mark == '.';
    commas |= mark == ',';
  }

  /** The cell of a number as it is; {@link BadInput} of {@code place} where it has thousands. */
  public String checked(String place, String cell) {
    String text = plain(cell);
    Matcher doubtful = DOUBTFUL.matcher(text);
    if (doubtful.matches()) {
      refuseDoubtful(place, cell, doubtful.group(1).charAt(0));
    } else if (DIVIDED.matcher(text).matches() && NumberText.read(text) == null) {
      throw new BadInput(place, cell, "has its thousands divided", "a number without, as 1800.5");
    }
    return cell;
  }

  private void refuseDoubtful(String place, String cell, char mark) {
    boolean shown = mark == '.' ? points : commas;
    boolean other = mark == '.' ? commas : points;
    if (other || !(shown || isDecimalAlone(mark))) {
      throw new BadInput(
          place,
          cell,
          "could be a decimal " + (mark == '.' ? "point" : "comma") + " or thousands",
          "a number without thousands, or with other than three decimals");
    }
  }

  /** Without other cells: commas between cells leave decimal points, semicolons decimal commas. */
  private boolean isDecimalAlone(char mark) {
    return switch (separator) {
      case ',' -> mark == '.';
      case ';' -> mark == ',';
      case '\t' -> false;
      default -> true;
    };
  }

  private static String plain(String cell) {
    return Decimals.withHyphen(cell.strip());
  }
}
