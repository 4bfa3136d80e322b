package org.chordlog.cli.statistics;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.statistics.CsvRows.Begin;
import org.chordlog.verdict.Counted;
import org.jspecify.annotations.Nullable;

/** Since which change readings count together, as a file tells, and where another phase begins. */
final class FilePhases {
  private final CsvColumns columns;
  private final AnalyseColumns places;
  private final List<Integer> order;
  private final int column;
  private final int jobs;
  private final int lots;
  private final List<String> all;
  private final String newest;
  private final @Nullable String wanted;
  private final Set<String> taken = new HashSet<>();
  private final Set<String> ownOfJobs = new HashSet<>();
  private boolean begun;
  private String before = "";
  private String lotBefore = "";
  private int run;

  /** {@code column}: that of phases, below 0 without one; {@code order}: of the rows. */
  FilePhases(CsvColumns columns, int column, List<Integer> order, AnalyseColumns places) {
    this.columns = columns;
    this.column = column;
    this.order = order;
    this.places = places;
    jobs = columns.only(AnalyseColumns.JOBS);
    lots = columns.only(AnalyseColumns.LOTS);
    all = column < 0 ? List.of() : inOrder();
    newest = all.isEmpty() ? "" : newest();
    wanted = all.isEmpty() ? null : places.phaseAmong(all, newest);
  }

  boolean wants(int row) {
    return wanted == null || wanted.equals(of(row));
  }

  /** A reading of it counts. */
  void counts(int row) {
    taken.add(of(row));
  }

  String lot(int row) {
    return lots < 0 ? "" : columns.cell(row, lots).strip();
  }

  /** How the reading of that row follows the one before; call it once for each, in order. */
  Begin next(int row) {
    String phase = column < 0 ? "" : job(row) + of(row);
    String lot = lot(row);
    ownOfJobs.add(phase);
    boolean begins = begun && !phase.equals(before);
    Begin how = lot.equals(lotBefore) ? Begin.SAME_LOT : Begin.OTHER_LOT;
    begun = true;
    before = phase;
    lotBefore = lot;
    run += begins ? 1 : 0;
    return begins ? how : Begin.NONE;
  }

  /** How many began until now. */
  int run() {
    return run;
  }

  /** Of which phases of the file the readings are. */
  Analysis.Phases ofReadings() {
    List<String> counting = all.stream().filter(taken::contains).toList();
    boolean whole = areNumbered(all) && !places.chooses();
    return new Analysis.Phases(all, counting, newest, wanted, whole);
  }

  /** A sentence where phases come again; else none. */
  List<String> said() {
    return run < Math.max(ownOfJobs.size(), 1)
        ? List.of()
        : List.of(
            "Phases are not together in that order of rows: they change "
                + Counted.of(run, "time")
                + ", and no range is counted at any change.");
  }

  /** Each job has phases of its own. */
  private String job(int row) {
    return jobs < 0 ? "" : columns.cell(row, jobs) + " ";
  }

  private String of(int row) {
    return column < 0 ? "" : columns.cell(row, column).strip();
  }

  /** Those of a job by their numbers, since rows may be in any order. */
  private List<String> inOrder() {
    List<String> appearing =
        order.stream().map(this::of).filter(each -> !each.isEmpty()).distinct().toList();
    return areNumbered(appearing)
        ? appearing.stream().sorted(Comparator.comparingInt(Integer::parseInt)).toList()
        : appearing;
  }

  private boolean areNumbered(List<String> names) {
    return places.phasesOfJob(columns) && names.stream().allMatch(each -> each.matches("\\d{1,9}"));
  }

  /** Other phases may come again: it is that of the last row that has one. */
  private String newest() {
    return areNumbered(all)
        ? all.get(all.size() - 1)
        : order.stream()
            .map(this::of)
            .filter(each -> !each.isEmpty())
            .reduce((earlier, last) -> last)
            .orElseThrow();
  }
}
