package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CsvNumerals;
import org.chordlog.measure.CsvText;
import org.chordlog.measure.NumberText;
import org.chordlog.measure.TimeText;
import org.chordlog.web.http.Texts;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/**
 * Rows of a CSV file, the first row naming the columns. The separator is the semicolon, tab or
 * comma that the first row holds first in this order; a number may have a decimal comma where the
 * comma is not the separator, or in quotes.
 */
final class TableFile {
  private static final int MOST = 500;

  private TableFile() {}

  /** A row by the names of its columns; what is empty is left out. Refusals name the column. */
  record Row(long line, Map<String, String> cells, CsvNumerals numerals) {
    @Nullable String text(String column) {
      return cells.get(column);
    }

    String needed(String column, String allowed) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new BadInput(column, "", "is missing", allowed);
      }
      return cell;
    }

    /** A length in mm. */
    @Nullable Double length(String column) {
      return number(column, "a length in mm as 1800 or 1800.5");
    }

    double neededLength(String column) {
      String allowed = "a length in mm as 1800 or 1800.5";
      String unused = needed(column, allowed);
      Double length = number(column, allowed);
      return length == null ? Double.NaN : length;
    }

    @Nullable Double number(String column, String allowed) {
      String cell = cells.get(column);
      if (cell == null) {
        return null;
      }
      Double value = NumberText.read(numerals.checked(column, cell));
      if (value == null) {
        throw new BadInput(column, cell, "is not a number", allowed);
      }
      return value;
    }

    /** UTC microseconds; in UTC where it has no offset. */
    long neededTime(String column) {
      return Times.read(column, needed(column, TimeText.ALLOWED));
    }
  }

  /** What a file may hold; {@code needed} is the column that says it is such a file. */
  record Form(String of, List<String> columns, String needed) {}

  /** Such a file (RFC 4180), its cells in the order of its columns. */
  static String text(Form form, List<List<String>> rows) {
    StringBuilder out = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180.builder().setHeader(form.columns().toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (List<String> row : rows) {
        printer.printRecord(row.stream().map(CsvText::harmless).toList());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  static List<Row> rows(String csv, Form form) {
    char separator = CsvText.separator(csv).orElse(',');
    String text = CsvText.table(csv);
    refuseUnreadable(text);
    try (CSVParser parser = CSVParser.parse(text, format(separator))) {
      List<String> names = names(parser.getHeaderNames(), form);
      CsvNumerals numerals = numerals(text, separator);
      List<Row> rows = new ArrayList<>();
      for (CSVRecord record : parser) {
        if (!record.stream().allMatch(String::isBlank)) {
          rows.add(new Row(parser.getCurrentLineNumber(), cells(record, names, parser), numerals));
        }
      }
      return bounded(rows, form);
    } catch (BadInput e) {
      throw e;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (IllegalArgumentException | UncheckedIOException e) {
      throw new BadInput("csv", "", "can't be read as a table", "rows of cells under one heading");
    }
  }

  /** A sign that stands for bytes which are none in UTF-8 would be kept in names for good. */
  private static void refuseUnreadable(String text) {
    if (text.indexOf('\uFFFD') >= 0 || text.indexOf('\0') >= 0) {
      throw new BadInput(
          "csv", "the file", "is not text in UTF-8", "a file saved as CSV with the coding UTF-8");
    }
  }

  private static CSVFormat format(char separator) {
    return CSVFormat.Builder.create()
        .setDelimiter(separator)
        .setHeader()
        .setSkipHeaderRecord(true)
        .setIgnoreHeaderCase(true)
        .setIgnoreEmptyLines(true)
        .setTrim(true)
        .setAllowMissingColumnNames(true)
        .get();
  }

  private static List<Row> bounded(List<Row> rows, Form form) {
    if (rows.isEmpty() || rows.size() > MOST) {
      throw new BadInput("csv", rows.size() + " " + form.of(), "can't be taken", "1 to " + MOST);
    }
    return rows;
  }

  private static CsvNumerals numerals(String text, char separator) throws IOException {
    try (CSVParser parser = CSVParser.parse(text, format(separator))) {
      return new CsvNumerals(separator, parser.stream().flatMap(CSVRecord::stream).toList());
    }
  }

  /** By the names of the columns, without what is empty. */
  private static Map<String, String> cells(CSVRecord record, List<String> names, CSVParser parser) {
    String line = "line " + parser.getCurrentLineNumber();
    int size = record.size();
    while (size > names.size() && CsvText.trimmed(record.get(size - 1)).isEmpty()) {
      size--;
    }
    if (size > names.size()) {
      throw new BadInput(
          line,
          size + " cells",
          "are more than there are headings",
          "at most " + names.size() + "; a decimal comma needs ; between cells");
    }
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < size; i++) {
      String cell = CsvText.trimmed(record.get(i));
      if (!cell.isEmpty()) {
        if (names.get(i).isEmpty()) {
          throw new BadInput(line, cell, "stands below no heading", "an empty cell there");
        }
        cells.put(names.get(i), CsvText.read(cell));
      }
    }
    cells.forEach(Texts::require);
    return cells;
  }

  /** In small letters; {@link BadInput} where one is unknown or there twice. */
  private static List<String> names(List<String> headings, Form form) {
    List<String> names =
        headings.stream().map(each -> CsvText.trimmed(each).toLowerCase(Locale.ROOT)).toList();
    refuseUnknown(names, form);
    for (String name : form.columns()) {
      if (Collections.frequency(names, name) > 1) {
        throw new BadInput("csv", name, "is there twice as a heading", "each heading once");
      }
    }
    return names;
  }

  private static void refuseUnknown(List<String> names, Form form) {
    Set<String> unknown = new TreeSet<>(names);
    unknown.remove("");
    boolean named = unknown.contains(form.needed());
    form.columns().forEach(unknown::remove);
    if (!unknown.isEmpty() || !named) {
      String given = unknown.isEmpty() ? "the first row" : String.join(", ", unknown);
      throw new BadInput(
          "csv",
          given,
          unknown.isEmpty()
              ? "has no column " + form.needed()
              : (unknown.size() == 1 ? "is not a column" : "are not columns")
                  + " of a file of "
                  + form.of(),
          String.join(", ", form.columns()));
    }
  }
}
