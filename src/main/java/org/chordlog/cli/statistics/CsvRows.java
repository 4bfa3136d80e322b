package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.NumberText;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.control.Observation;
import org.jspecify.annotations.Nullable;

/** The readings of a CSV file, with where each belongs. */
final class CsvRows {
  private static final String ALL = "all";

  private final CsvColumns columns;
  private final int value;
  private final AnalyseColumns places;
  private final AnalyseColumns.Found at;
  private final RowOrder order;
  private final List<Row> rows = new ArrayList<>();
  private final List<Long> leftOut = new ArrayList<>();
  private final List<Long> excluded = new ArrayList<>();
  private final Set<String> positions = new LinkedHashSet<>();
  private final FilePhases phases;
  private int job;
  private int piece;

  /**
   * A reading; {@code nominal} NaN where it has none of its own; {@code begins}: whether another
   * phase begins with it; {@code phaseRun}: how many began until then; {@code counts}: false of one
   * that is excluded, which only keeps its place.
   */
  record Row(
      int number,
      int job,
      int piece,
      String position,
      String lot,
      double value,
      double nominal,
      double sigma,
      String recordedLot,
      Begin begins,
      int phaseRun,
      boolean counts) {
    Observation observation(double uncertainty) {
      return new Observation(number, piece, position, number, analysed(), uncertainty / sigma);
    }

    /** The change that its phase begins with, as far as a file tells. */
    JobEvent beginning() {
      JobEvent.Kind kind =
          begins == Begin.OTHER_LOT ? JobEvent.Kind.MATERIAL_LOT : JobEvent.Kind.SET_UP;
      return new JobEvent(
          0,
          job,
          "",
          kind,
          number - 1L,
          new JobEvent.Content(null, null, recordedLot, ""),
          new Recorded(number, ""));
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

  /** What a file tells of the beginning of a phase: with another lot or with the same. */
  enum Begin {
    NONE,
    SAME_LOT,
    OTHER_LOT
  }

  CsvRows(CsvColumns columns, int value, AnalyseColumns places) {
    this.columns = columns;
    this.value = value;
    this.places = places;
    at = places.in(columns);
    order = places.order(columns);
    phases = new FilePhases(columns, at.phase(), order.rows(), places);
    for (int i = 0; i < columns.rows(); i++) {
      take(i);
    }
  }

  /** The row that is taken as number {@code i}. */
  private void take(int i) {
    int row = order.rows().get(i);
    boolean otherJob = changed(i, at.job());
    job += otherJob ? 1 : 0;
    piece += otherJob || at.piece() < 0 || changed(i, at.piece()) ? 1 : 0;
    String lot = at.lot() < 0 ? "" : columns.cell(row, at.lot()).strip();
    if (!places.wants(lot) || !phases.wants(row)) {
      return;
    }
    boolean counts = !columns.isExcluded(row);
    if (!counts) {
      excluded.add(columns.line(row));
    }
    Double read = number(row, value);
    Double nominal = at.nominal() < 0 ? (Double) Double.NaN : number(row, at.nominal());
    Double sigma = at.sigma() < 0 ? (Double) 1.0 : number(row, at.sigma());
    if (read == null || nominal == null || sigma == null) {
      if (counts) {
        refuseHalfNumber(row);
        leftOut.add(columns.line(row));
      }
      return;
    }
    positive(row, sigma);
    String position = position(row);
    if (counts) {
      positions.add(position);
      phases.counts(row);
    }
    Begin begins = phases.next(row);
    rows.add(
        new Row(
            i + 1,
            job,
            piece,
            position,
            lot,
            read,
            nominal,
            sigma,
            phases.lot(row),
            begins,
            phases.run(),
            counts));
  }

  private String position(int row) {
    String position = at.position() < 0 ? "" : columns.cell(row, at.position()).strip();
    return position.isEmpty() ? ALL : position;
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

  private boolean changed(int i, int column) {
    List<Integer> all = order.rows();
    return i > 0
        && column >= 0
        && !columns.cell(all.get(i), column).equals(columns.cell(all.get(i - 1), column));
  }

  /** Of a column of words nothing could be said, and nothing is what a process in control has. */
  void refuseWithoutNumbers(String column) {
    if (rows.stream().noneMatch(Row::counts) && !leftOut.isEmpty()) {
      throw new BadInput(
          "--column", column, "has no line with a number that counts", "a column of numbers");
    }
  }

  /** Excluded ones too, in their places. */
  void forEach(Consumer<Row> use) {
    rows.forEach(use);
  }

  /** Lots in the order in which they appear. */
  List<String> lots() {
    return rows.stream().filter(Row::counts).map(Row::lot).distinct().toList();
  }

  /** In the order in which they appear. */
  List<String> positions() {
    return positions.isEmpty() ? List.of(ALL) : List.copyOf(positions);
  }

  boolean severalPhases() {
    return rows.stream().anyMatch(row -> row.begins() != Begin.NONE);
  }

  /** Readings of the piece and pass that have most, where the file is one of exported readings. */
  int mostInAPieceExported() {
    if (!AnalyseColumns.isExported(columns)) {
      return 0;
    }
    int pass = columns.only("pass");
    Map<String, Integer> count = new HashMap<>();
    for (Row row : rows) {
      String in = pass < 0 ? "" : columns.cell(order.rows().get(row.number() - 1), pass);
      count.merge(row.piece() + " " + in, 1, Integer::sum);
    }
    return count.values().stream().mapToInt(Integer::intValue).max().orElse(0);
  }

  /** Of which phases of the file the rows are. */
  Analysis.Phases phases() {
    return phases.ofReadings();
  }

  Analysis.LeftOut leftOut(List<Long> again) {
    return new Analysis.LeftOut(
        inOrder(leftOut), inOrder(excluded), columns.summaries(), columns.headingsAgain(), again);
  }

  private static List<Long> inOrder(List<Long> lines) {
    return lines.stream().sorted().toList();
  }

  /** How the file was read, a sentence each. */
  List<String> notes() {
    List<String> notes = new ArrayList<>(order.said());
    notes.addAll(phases.said());
    notes.addAll(new RowNotes(columns, at).said());
    return notes;
  }
}
