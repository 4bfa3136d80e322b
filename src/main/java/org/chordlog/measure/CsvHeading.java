package org.chordlog.measure;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Whether the first line of a CSV file names its columns: it does where none of its cells is a
 * number. A line that could as well be data is refused, since a reading would be lost, or a heading
 * taken for one.
 */
public final class CsvHeading {
  private static final Pattern WITH_UNIT =
      Pattern.compile("[-+]?\\d+(?:[.,]\\d+)?\\s*(?:mm|in|\"|µm|um|m|%)", Pattern.CASE_INSENSITIVE);
  private static final Set<String> NO_VALUE = Set.of("n/a", "#n/a", "na", "nan", "null", "-", "–");

  private final List<List<String>> rows;
  private final List<String> first;

  private CsvHeading(List<List<String>> rows) {
    this.rows = rows;
    first = rows.get(0);
  }

  /** Of a file with at least that line; {@link BadInput} where it can't be told. */
  public static boolean isIn(List<List<String>> rows) {
    CsvHeading heading = new CsvHeading(rows);
    boolean headed = heading.first.stream().allMatch(cell -> NumberText.read(cell) == null);
    if (headed) {
      heading.refuseData();
    } else {
      heading.refuseNumbersAsNames();
    }
    return headed;
  }

  private void refuseData() {
    for (int column = 0; column < first.size(); column++) {
      String cell = cell(0, column);
      if (looksLikeData(cell) || isBelow(column, cell)) {
        throw new BadInput(
            "first line",
            cell,
            "looks like data, but a line without a number is taken for the names of the columns",
            "a first line that names each column, as piece and radius");
      }
    }
  }

  private static boolean looksLikeData(String cell) {
    return WITH_UNIT.matcher(Decimals.withHyphen(cell)).matches()
        || isNoValue(cell)
        || TimeText.looksLike(cell);
  }

  private static boolean isNoValue(String cell) {
    return NO_VALUE.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** Where the whole heading comes again, files were put together. */
  private boolean isBelow(int column, String cell) {
    return !cell.isEmpty()
        && IntStream.range(1, rows.size())
            .anyMatch(row -> cell(row, column).equals(cell) && !rows.get(row).equals(first));
  }

  /** As piece; 1; 2; 3 above the readings of each piece: 1 would be the first of them. */
  private void refuseNumbersAsNames() {
    for (int column = 0; column < first.size(); column++) {
      String cell = cell(0, column);
      if (!cell.isEmpty()
          && NumberText.read(cell) == null
          && !isNoValue(cell)
          && isAboveNumbers(column)) {
        throw new BadInput(
            "first line",
            cell,
            "names a column of numbers, but another cell of this line is a number",
            "a first line of names without a number, as piece and r1; or data alone");
      }
    }
  }

  private boolean isAboveNumbers(int column) {
    List<String> below =
        IntStream.range(1, rows.size())
            .mapToObj(row -> cell(row, column))
            .filter(each -> !each.isEmpty())
            .toList();
    return below.size() > 1 && below.stream().allMatch(each -> NumberText.read(each) != null);
  }

  private String cell(int row, int column) {
    List<String> cells = rows.get(row);
    return column < cells.size() ? CsvText.trimmed(cells.get(column)) : "";
  }
}
