package org.chordlog.cli.common;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CsvNumerals;
import org.chordlog.measure.CsvSummary;
import org.chordlog.measure.CsvText;
import org.chordlog.measure.NumberText;
import org.chordlog.report.CsvSeal;
import org.jspecify.annotations.Nullable;

/**
 * Columns of a CSV file. The separator is the first of semicolon, tab and comma that the first line
 * holds; a file whose first line holds none has one column. A first line without a number names the
 * columns. Where the comma is not the separator, or in quotes, a number may have a decimal comma;
 * one that could be thousands is refused where commas are in quotes. A row with more cells than the
 * first one is refused: a decimal comma would have been cut there.
 */
public final class CsvColumns {
  /** The comment at the end of exported readings. */
  private static final String SEAL = CsvSeal.BEGIN;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /** One that no text file holds: the whole line is one cell. */
  private static final char NONE = '\u001F';

  private final List<Row> rows;
  private final List<Row> summaries;
  private final List<Row> headings;
  private final boolean headed;
  private final List<String> names;
  private final CsvNumerals numerals;

  /** The cells of a row, and the line of the file that it begins on. */
  private record Row(long line, List<String> cells) {}

  private CsvColumns(
      List<Row> rows,
      List<Row> summaries,
      List<Row> headings,
      boolean headed,
      List<String> names,
      CsvNumerals numerals) {
    this.rows = rows;
    this.summaries = summaries;
    this.headings = headings;
    this.headed = headed;
    this.names = names;
    this.numerals = numerals;
  }

  /**
   * Reads the whole file. Without a head the columns are named by their numbers from 1. Throws
   * {@link BadInput} of {@code field} where it can't be read or has no rows, and of the line that
   * sums up the others.
   */
  public static CsvColumns read(String field, Path file, CsvOptions options) {
    CsvColumns read = withoutSummaries(field, file, options);
    if (!read.summaries.isEmpty()) {
      Row first = read.summaries.get(0);
      throw new BadInput(
          "line " + first.line(),
          String.join(", ", first.cells().stream().filter(cell -> !cell.isBlank()).toList()),
          "seems to sum up the other rows, not to be one of them",
          "rows of data alone; delete this line, or say --all-rows if it is one of them");
    }
    return read;
  }

  /** The same, where rows that sum up others are left out: the caller says {@link #summaries}. */
  public static CsvColumns withoutSummaries(String field, Path file, CsvOptions options) {
    try {
      return of(field, file, Files.readString(file, StandardCharsets.UTF_8), options);
    } catch (IOException e) {
      throw UnreadableFile.of(field, file, e);
    }
  }

  private static CsvColumns of(String field, Path file, String csv, CsvOptions options)
      throws IOException {
    // Who puts cells in quotes divides them by commas, also where there is one column.
    char separator = CsvText.separator(csv).orElse(csv.indexOf('"') < 0 ? NONE : ',');
    List<Row> rows = rows(file, CsvText.table(csv).replace(BYTE_ORDER_MARK, ""), separator);
    List<String> first = rows.get(0).cells();
    boolean headed = options.isHeaded(rows.stream().map(Row::cells).toList());
    List<String> names = new ArrayList<>();
    for (int i = 0; i < first.size(); i++) {
      names.add(headed ? CsvText.trimmed(first.get(i)) : "" + (i + 1));
    }
    List<String> all = rows.stream().flatMap(row -> row.cells().stream()).toList();
    CsvNumerals numerals = new CsvNumerals(separator, all);
    List<Row> below = headed ? rows.subList(1, rows.size()) : rows;
    List<Row> headings =
        headed ? below.stream().filter(row -> isNames(row, names)).toList() : List.of();
    List<Row> data = below.stream().filter(row -> !headed || !isNames(row, names)).toList();
    refuseEmpty(data, field, file);
    Set<Integer> sums =
        options.allRows() ? Set.of() : CsvSummary.among(data.stream().map(Row::cells).toList());
    return new CsvColumns(
        without(data, sums),
        sums.stream().map(data::get).toList(),
        headings,
        headed,
        names,
        numerals);
  }

  private static List<Row> without(List<Row> rows, Set<Integer> out) {
    return IntStream.range(0, rows.size())
        .filter(i -> !out.contains(i))
        .mapToObj(rows::get)
        .toList();
  }

  /** The heading once more, as where files were put together. */
  private static boolean isNames(Row row, List<String> names) {
    return row.cells().stream().map(CsvText::trimmed).toList().equals(names);
  }

  /** The same file without those of its rows. */
  public CsvColumns without(Set<Integer> out) {
    return new CsvColumns(without(rows, out), summaries, headings, headed, names, numerals);
  }

  private static void refuseEmpty(List<Row> data, String field, Path file) {
    if (data.isEmpty()) {
      throw new BadInput(
          field, file, "has no row below its heading", "a heading and rows below it");
    }
  }

  /** Read once, since what another program writes into a pipe comes once. */
  private static List<Row> rows(Path file, String text, char separator) throws IOException {
    CSVFormat format =
        CSVFormat.Builder.create().setDelimiter(separator).setIgnoreEmptyLines(true).get();
    List<Row> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      for (CSVRecord each : parser) {
        if (each.get(0).startsWith(SEAL) || each.stream().allMatch(String::isBlank)) {
          continue;
        }
        long breaks =
            each.stream().mapToLong(cell -> cell.chars().filter(c -> c == '\n').count()).sum();
        rows.add(new Row(parser.getCurrentLineNumber() - breaks, each.toList()));
      }
    }
    if (rows.isEmpty()) {
      throw new BadInput("FILE", file, "is empty", "a CSV file with rows");
    }
    rows.forEach(row -> noLonger(row, rows.get(0).cells().size()));
    return rows;
  }

  private static void noLonger(Row row, int most) {
    int size = row.cells().size();
    while (size > most && row.cells().get(size - 1).isBlank()) {
      size--;
    }
    if (size > most) {
      throw new BadInput(
          "line " + row.line(),
          String.join(",", row.cells()),
          "has " + size + " cells, more than the first line",
          most + "; write decimal commas in quotes, or use semicolons between cells");
    }
  }

  /** A finite number with decimal point or comma, or null; throws as {@link #numeral}. */
  public @Nullable Double number(int row, int column) {
    return NumberText.read(numeral(row, column));
  }

  /** The cell of a number; {@link BadInput} where it has thousands divided, or could have. */
  public String numeral(int row, int column) {
    return numerals.checked(place(row, column), cell(row, column));
  }

  /** Where a cell stands, for who is told of it. */
  public String place(int row, int column) {
    return "row " + line(row) + ", column " + name(column);
  }

  public int rows() {
    return rows.size();
  }

  /** Lines of rows that sum up others, and are left out. */
  public List<Long> summaries() {
    return summaries.stream().map(Row::line).toList();
  }

  /** Lines below the first that repeat its heading, and are left out. */
  public List<Long> headingsAgain() {
    return headings.stream().map(Row::line).toList();
  }

  /** What the first line names its columns; empty where it is data. */
  public List<String> heading() {
    return headed ? names : List.of();
  }

  /** Line of the file that a row begins on. */
  public long line(int row) {
    return rows.get(row).line();
  }

  /** Whether a column has that name. */
  public boolean has(String column) {
    return index(column) >= 0;
  }

  /** A column by its name, else by its number from 1; the only one if null. */
  public int find(String option, @Nullable String column) {
    if (column == null && names.size() == 1) {
      return 0;
    }
    int at = column == null ? -1 : index(column);
    if (at < 0 && column != null && column.matches("\\d{1,6}")) {
      at = Integer.parseInt(column) - 1;
    }
    if (at < 0 || at >= names.size()) {
      throw new BadInput(
          option,
          column == null ? "" : column,
          column == null ? "is needed where there are several columns" : "is not a column",
          String.join(", ", names.stream().filter(each -> !each.isEmpty()).toList()));
    }
    return at;
  }

  /** As an export of readings says of one that does not count. */
  public boolean isExcluded(int row) {
    int column = index("excluded_reason");
    return column >= 0 && !cell(row, column).isBlank();
  }

  /** Count of columns. */
  public int width() {
    return names.size();
  }

  /** A column by its name in small or capital letters, −1 if none; refused where two have it. */
  public int index(String name) {
    int[] found = named(name);
    if (found.length > 1) {
      throw new BadInput("heading", name, "is there twice", "each heading once");
    }
    return found.length == 0 ? -1 : found[0];
  }

  /** The only column of that name, which nobody asked for; −1 where none has it, or several. */
  public int only(String name) {
    int[] found = named(name);
    return found.length == 1 ? found[0] : -1;
  }

  private int[] named(String name) {
    return IntStream.range(0, names.size())
        .filter(each -> names.get(each).equalsIgnoreCase(name))
        .toArray();
  }

  public String name(int column) {
    return names.get(column);
  }

  /** Empty where the row has fewer cells. */
  public String cell(int row, int column) {
    List<String> cells = rows.get(row).cells();
    return column < cells.size() ? CsvText.trimmed(CsvText.read(cells.get(column))) : "";
  }
}
