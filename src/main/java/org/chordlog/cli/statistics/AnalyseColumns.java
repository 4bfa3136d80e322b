package org.chordlog.cli.statistics;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.RowsAgain;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Columns that say where each reading belongs, and what it is measured against. */
final class AnalyseColumns {
  /** As in an export of readings. */
  static final String LOTS = "material_lot";

  private static final String PHASES = "phase";
  static final String JOBS = "job_id";
  private static final String NEWEST = "newest";

  @Option(
      names = {"--piece-column", "--subgroup-column"},
      paramLabel = "COLUMN",
      description = {
        "A piece is what has the same text here in a row.",
        "Without --subgroup it is a subgroup, of up to 25 readings."
      })
  private @Nullable String piece;

  @Option(
      names = "--position-column",
      paramLabel = "COLUMN",
      description = "Positions are kept apart and compared.")
  private @Nullable String position;

  @Option(
      names = "--time-column",
      paramLabel = "COLUMN",
      description = {
        "When each was measured, as 2026-05-04 14:30 or 4.5.2026 14:30 (time_utc, time or date).",
        "Rows are taken in that order."
      })
  private @Nullable String time;

  @Option(names = "--file-order", description = "Take rows as the file has them, not by times.")
  private boolean fileOrder;

  @Option(
      names = "--lot-column",
      paramLabel = "COLUMN",
      description = "Material lots: the figures lot by lot as well.")
  private @Nullable String lotColumn;

  @Option(
      names = "--lot",
      paramLabel = "LOT",
      description = "Only readings of that lot; the column is material_lot unless it is named.")
  private @Nullable String lot;

  @Option(
      names = "--job-column",
      paramLabel = "COLUMN",
      description = "Jobs, for the machine over its jobs.")
  private @Nullable String job;

  @Option(
      names = "--nominal-column",
      paramLabel = "COLUMN",
      description = {
        "Nominal of each reading's job: deviations from it are analysed, so that short runs pool.",
        "Limits and target then are those of the deviation."
      })
  private @Nullable String nominal;

  @Option(
      names = "--sigma-column",
      paramLabel = "COLUMN",
      description = "Standard deviation expected of each job: deviations are divided by it.")
  private @Nullable String sigma;

  @Option(
      names = "--phase-column",
      paramLabel = "COLUMN",
      description = {
        "Phases, between which no range is counted.",
        "Of readings exported of one job it is phase, unless another is named."
      })
  private @Nullable String phaseColumn;

  @Option(
      names = "--phase",
      paramLabel = "PHASE",
      description = {
        "Only readings of that phase: what stands in its column, or newest.",
        "The newest is what a job's page shows first."
      })
  private @Nullable String phase;

  boolean byLot() {
    return lotColumn != null && lot == null;
  }

  /** Whether readings of that lot are wanted. */
  boolean wants(String each) {
    return lot == null || lot.equals(each);
  }

  boolean byPiece() {
    return piece != null;
  }

  /** Whether each reading has a nominal of its own. */
  boolean pools() {
    if (nominal == null && sigma != null) {
      throw new BadInput("--sigma-column", sigma, "has no nominal", "with --nominal-column");
    }
    return nominal != null;
  }

  boolean standardised() {
    return sigma != null;
  }

  String quantity(String plain) {
    if (!pools()) {
      return plain;
    }
    return sigma == null ? "deviation from nominal" : "standardised deviation";
  }

  /** The order of rows by what the file says. */
  RowOrder order(CsvColumns columns) {
    if (fileOrder && time != null) {
      throw new BadInput("--file-order", "", "is given beside --time-column", "one of them");
    }
    return fileOrder ? RowOrder.asFiled(columns) : RowOrder.of(columns, in(columns));
  }

  /** Rows that are surely there twice: by the ids of readings, else by times with seconds. */
  Set<Integer> again(CsvColumns columns) {
    int id = columns.only("id");
    RowTimes times = RowTimes.of(columns, find(columns, "--time-column", time));
    int key = id >= 0 || times == null ? id : times.key();
    return key < 0 ? Set.of() : RowsAgain.among(columns, key);
  }

  /** Index of each column, -1 where there is none. */
  record Found(
      int piece, int position, int time, int job, int lot, int nominal, int sigma, int phase) {}

  Found in(CsvColumns columns) {
    return new Found(
        find(columns, "--piece-column", piece),
        find(columns, "--position-column", position),
        find(columns, "--time-column", time),
        find(columns, "--job-column", job),
        find(columns, "--lot-column", lotColumn == null && lot != null ? LOTS : lotColumn),
        find(columns, "--nominal-column", nominal),
        find(columns, "--sigma-column", sigma),
        phases(columns));
  }

  private int phases(CsvColumns columns) {
    int found =
        phaseColumn != null
            ? columns.find("--phase-column", phaseColumn)
            : !pools() && jobs(columns).size() == 1 ? columns.only(PHASES) : -1;
    if (phase != null && jobs(columns).size() > 1) {
      throw new BadInput(
          "--phase",
          phase,
          "could be of any of the jobs " + String.join(", ", jobs(columns)),
          "a file of one job");
    }
    if (phase != null && found < 0) {
      throw new BadInput(
          "--phase",
          phase,
          "has no column of phases",
          "with --phase-column, or for readings exported of one job");
    }
    return found;
  }

  /** Whether the file is one of exported readings. */
  static boolean isExported(CsvColumns columns) {
    return columns.only(JOBS) >= 0;
  }

  /** Of exported readings, in the order of the file; pieces of others in between begin no phase. */
  static List<String> jobs(CsvColumns columns) {
    int at = columns.only(JOBS);
    return at < 0
        ? List.of()
        : IntStream.range(0, columns.rows())
            .mapToObj(row -> columns.cell(row, at))
            .distinct()
            .toList();
  }

  /** Whether the phases are those of a job, which counts them from 1. */
  boolean phasesOfJob(CsvColumns columns) {
    int at = columns.only(PHASES);
    return at >= 0 && isExported(columns) && phases(columns) == at;
  }

  /** The one asked for, null for all; {@code all}: those of the file. */
  @Nullable String phaseAmong(List<String> all, String newest) {
    String wanted = NEWEST.equals(phase) ? newest : phase;
    if (wanted != null && !all.contains(wanted)) {
      throw new BadInput(
          "--phase", wanted, "is not in the file", NEWEST + ", " + String.join(", ", all));
    }
    return wanted;
  }

  /** Whether only some of the rows are wanted. */
  boolean chooses() {
    return lot != null;
  }

  private static int find(CsvColumns columns, String option, @Nullable String name) {
    return name == null ? -1 : columns.find(option, name);
  }
}
