package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.NumberText;
import org.chordlog.stats.control.Observation;
import org.jspecify.annotations.Nullable;

/** The readings of a CSV file, with where each belongs. */
final class CsvRows {
  private static final String ALL = "all";

  private final CsvColumns columns;
  private final int value;
  private final AnalyseColumns places;
  private final AnalyseColumns.Found at;
  private final List<Row> rows = new ArrayList<>();
  private final List<Long> leftOut = new ArrayList<>();
  private final List<Long> excluded = new ArrayList<>();
  private final Set<String> positions = new LinkedHashSet<>();
  private int job;
  private int piece;

  /** A reading; {@code nominal} NaN where it has none of its own. */
  record Row(
      int number,
      int job,
      int piece,
      String position,
      String lot,
      double value,
      double nominal,
      double sigma) {
    Observation observation(double uncertainty) {
      return new Observation(number, piece, position, number, analysed(), uncertainty / sigma);
    }

    private double analysed() {
      return Double.isNaN(nominal) ? value : (value - nominal) / sigma;
    }

    /** Deviation in parts of its own nominal, else of {@code base}; the value itself where 0. */
    double relative(double base) {
      double from = Double.isNaN(nominal) ? base : nominal;
      return from == 0 ? value : value / from - 1;
    }
  }

  CsvRows(CsvColumns columns, int value, AnalyseColumns places) {
    this.columns = columns;
    this.value = value;
    this.places = places;
    at = places.in(columns);
    for (int row = 0; row < columns.rows(); row++) {
      take(row);
    }
  }

  private void take(int row) {
    boolean otherJob = changed(row, at.job());
    job += otherJob ? 1 : 0;
    piece += otherJob || at.piece() < 0 || changed(row, at.piece()) ? 1 : 0;
    String lot = at.lot() < 0 ? "" : columns.cell(row, at.lot()).strip();
    if (!places.wants(lot)) {
      return;
    }
    if (columns.isExcluded(row)) {
      excluded.add(columns.line(row));
      return;
    }
    Double read = number(row, value);
    Double nominal = at.nominal() < 0 ? (Double) Double.NaN : number(row, at.nominal());
    Double sigma = at.sigma() < 0 ? (Double) 1.0 : number(row, at.sigma());
    if (read == null || nominal == null || sigma == null) {
      refuseHalfNumber(row);
      leftOut.add(columns.line(row));
      return;
    }
    positive(row, sigma);
    String position = at.position() < 0 ? ALL : columns.cell(row, at.position()).strip();
    positions.add(position.isEmpty() ? ALL : position);
    rows.add(
        new Row(
            row + 1, job, piece, position.isEmpty() ? ALL : position, lot, read, nominal, sigma));
  }

  /** To leave out 1800 mm or 12:30 would bend the statistics; a word or nothing is no reading. */
  private void refuseHalfNumber(int row) {
    String cell = Decimals.withHyphen(columns.cell(row, value).strip());
    if (NumberText.read(cell) == null && cell.matches("[-+]?[.,]?\\d.*")) {
      throw new BadInput(
          columns.place(row, value),
          columns.cell(row, value).strip(),
          "is not a number",
          "a number alone; only rows with a word or nothing there are left out");
    }
  }

  private void positive(int row, double sigma) {
    if (!(sigma > 0)) {
      throw new BadInput(
          "--sigma-column", sigma, "is not above 0 in row " + columns.line(row), "above 0");
    }
  }

  private @Nullable Double number(int row, int column) {
    return columns.number(row, column);
  }

  private boolean changed(int row, int column) {
    return row > 0
        && column >= 0
        && !columns.cell(row, column).equals(columns.cell(row - 1, column));
  }

  /** Of a column of words nothing could be said, and nothing is what a process in control has. */
  void refuseWithoutNumbers(String column) {
    if (rows.isEmpty() && !leftOut.isEmpty()) {
      throw new BadInput(
          "--column", column, "has no line with a number that counts", "a column of numbers");
    }
  }

  void forEach(Consumer<Row> use) {
    rows.forEach(use);
  }

  /** Lots in the order in which they appear. */
  List<String> lots() {
    return rows.stream().map(Row::lot).distinct().toList();
  }

  /** In the order in which they appear. */
  List<String> positions() {
    return positions.isEmpty() ? List.of(ALL) : List.copyOf(positions);
  }

  Analysis.LeftOut leftOut() {
    return new Analysis.LeftOut(leftOut, excluded);
  }
}
