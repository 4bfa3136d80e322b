package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * Orders as a file brings them: one row each, the first row naming the columns. The separator is
 * the semicolon, tab or comma that the first row holds first in this order; lengths are mm, with a
 * decimal comma where the comma is not the separator.
 */
final class OrderFile {
  static final List<String> COLUMNS =
      List.of(
          "order",
          "part",
          "lot",
          "target",
          "tolerance",
          "lower",
          "upper",
          "customer",
          "drawing_revision");
  private static final int MOST = 500;
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /** A row by the names of its columns; what is empty is left out. */
  record Row(long line, Map<String, String> cells) {
    @Nullable String text(String column) {
      return cells.get(column);
    }

    /** A length in mm; refused by the column's name where it is no number. */
    @Nullable Double length(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        return null;
      }
      try {
        return Double.valueOf(cell.replace(',', '.'));
      } catch (NumberFormatException e) {
        throw new BadInput(column, cell, "is no number", "a length in mm as 1800 or 1800.5");
      }
    }
  }

  private OrderFile() {}

  static List<Row> rows(String csv) {
    String text = csv.startsWith(BYTE_ORDER_MARK) ? csv.substring(1) : csv;
    String first = text.lines().findFirst().orElse("");
    CSVFormat format =
        CSVFormat.Builder.create()
            .setDelimiter(first.contains(";") ? ";" : first.contains("\t") ? "\t" : ",")
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreHeaderCase(true)
            .setIgnoreEmptyLines(true)
            .setTrim(true)
            .get();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      refuseUnknown(parser.getHeaderNames());
      List<Row> rows = new ArrayList<>();
      for (CSVRecord record : parser) {
        rows.add(row(record, parser));
      }
      return bounded(rows);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (IllegalArgumentException | UncheckedIOException e) {
      throw new BadInput("csv", "", "can't be read as a table", "rows of cells under one heading");
    }
  }

  private static List<Row> bounded(List<Row> rows) {
    if (rows.isEmpty() || rows.size() > MOST) {
      throw new BadInput("csv", rows.size() + " orders", "can't be taken", "1 to " + MOST);
    }
    return rows;
  }

  private static Row row(CSVRecord record, CSVParser parser) {
    if (record.size() > parser.getHeaderNames().size()) {
      throw new BadInput(
          "line " + parser.getCurrentLineNumber(),
          record.size() + " cells",
          "are more than there are headings",
          "at most " + parser.getHeaderNames().size() + "; a decimal comma needs ; between cells");
    }
    Map<String, String> cells =
        record.toMap().entrySet().stream()
            .filter(cell -> !cell.getValue().isBlank())
            .collect(
                Collectors.toMap(
                    cell -> cell.getKey().toLowerCase(java.util.Locale.ROOT), Map.Entry::getValue));
    return new Row(parser.getCurrentLineNumber(), cells);
  }

  private static void refuseUnknown(List<String> names) {
    Set<String> unknown = new TreeSet<>();
    names.forEach(name -> unknown.add(name.toLowerCase(java.util.Locale.ROOT)));
    boolean named = unknown.contains("order");
    COLUMNS.forEach(unknown::remove);
    if (!unknown.isEmpty() || !named) {
      String given = unknown.isEmpty() ? "the first row" : String.join(", ", unknown);
      throw new BadInput(
          "csv",
          given,
          unknown.isEmpty() ? "has no column order" : "is no column of an order file",
          String.join(", ", COLUMNS));
    }
  }
}
