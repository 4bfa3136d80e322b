package org.chordlog.cli.common;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * Columns of a CSV file. The separator is the first of semicolon, tab and comma that the first line
 * holds; a first line without a number names the columns; with a semicolon or tab, or in quotes, a
 * number may have a decimal comma.
 */
public final class CsvColumns {
  private static final List<String> SEPARATORS = List.of(";", "\t", ",");
  private final List<CSVRecord> rows;
  private final List<String> names;

  private CsvColumns(List<CSVRecord> rows, List<String> names) {
    this.rows = rows;
    this.names = names;
  }

  public static CsvColumns read(Path file) {
    try {
      List<CSVRecord> rows = records(file);
      boolean headed = rows.get(0).stream().allMatch(cell -> number(cell) == null);
      List<String> names = new ArrayList<>();
      for (int i = 0; i < rows.get(0).size(); i++) {
        names.add(headed ? rows.get(0).get(i).strip() : String.valueOf(i + 1));
      }
      return new CsvColumns(headed ? rows.subList(1, rows.size()) : rows, names);
    } catch (IOException e) {
      throw new BadInput("FILE", file, "can't be read: " + e.getMessage(), "a readable CSV file");
    }
  }

  private static List<CSVRecord> records(Path file) throws IOException {
    char separator = separator(file);
    CSVFormat format =
        CSVFormat.Builder.create().setDelimiter(separator).setIgnoreEmptyLines(true).get();
    try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        CSVParser parser = CSVParser.parse(in, format)) {
      List<CSVRecord> rows = parser.getRecords();
      if (rows.isEmpty()) {
        throw new BadInput("FILE", file, "is empty", "a CSV file with rows");
      }
      return rows;
    }
  }

  private static char separator(Path file) throws IOException {
    try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      char[] start = new char[4096];
      int length = Math.max(0, in.read(start));
      String line = new String(start, 0, length).lines().findFirst().orElse("");
      return SEPARATORS.stream().filter(line::contains).findFirst().orElse(",").charAt(0);
    }
  }

  /** A finite number with decimal point or comma, or null. */
  public static @Nullable Double number(String cell) {
    String text = cell.strip().replace("\uFEFF", "");
    if (text.indexOf(',') >= 0 && text.indexOf('.') < 0) {
      text = text.replace(',', '.');
    }
    if (!text.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?")) {
      return null;
    }
    double value = Double.parseDouble(text);
    return Double.isFinite(value) ? value : null;
  }

  public int rows() {
    return rows.size();
  }

  /** Line of the file that a row ends on. */
  public long line(int row) {
    return rows.get(row).getRecordNumber();
  }

  /** Whether a column has that name. */
  public boolean has(String column) {
    return names.contains(column);
  }

  /** A column by its name, else by its number from 1; the only one if null. */
  public int find(String option, @Nullable String column) {
    if (column == null && names.size() == 1) {
      return 0;
    }
    int at = column == null ? -1 : names.indexOf(column);
    if (at < 0 && column != null && column.matches("\\d{1,6}")) {
      at = Integer.parseInt(column) - 1;
    }
    if (at < 0 || at >= names.size()) {
      throw new BadInput(option, String.valueOf(column), "is no column", names.toString());
    }
    return at;
  }

  /** Count of columns. */
  public int width() {
    return names.size();
  }

  /** A column by its name, −1 if there is none. */
  public int index(String name) {
    return names.indexOf(name);
  }

  public String name(int column) {
    return names.get(column);
  }

  public String cell(int row, int column) {
    CSVRecord found = rows.get(row);
    return column < found.size() ? found.get(column) : "";
  }
}
