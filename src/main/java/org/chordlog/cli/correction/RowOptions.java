package org.chordlog.cli.correction;

import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.correction.RowCells.Meaning;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Columns of a CSV file; those not named are found where they have the usual name. */
final class RowOptions {
  @Option(
      names = "--column",
      paramLabel = "COLUMN",
      defaultValue = "radius",
      description = "Radii (radius).")
  private String radius;

  @Option(
      names = "--uncertainty-column",
      paramLabel = "COLUMN",
      description = "Their standard uncertainties (uncertainty).")
  private @Nullable String uncertainty;

  @Option(
      names = "--piece-column",
      paramLabel = "COLUMN",
      description = "A piece is what has the same text here in a row (piece).")
  private @Nullable String piece;

  @Option(
      names = "--position-column",
      paramLabel = "COLUMN",
      description = "Positions on a piece (position).")
  private @Nullable String position;

  @Option(
      names = "--set-up-column",
      paramLabel = "COLUMN",
      description = "yes, x, true or 1: set up before this (setUp).")
  private @Nullable String setUp;

  @Option(
      names = "--lot-column",
      paramLabel = "COLUMN",
      description = "Material lot; a change is a new lot (lot).")
  private @Nullable String lot;

  @Option(
      names = "--yield-column",
      paramLabel = "COLUMN",
      description = "Yield strength of the lot by its certificate, MPa (yieldMpa).")
  private @Nullable String yields;

  @Option(
      names = "--before-column",
      paramLabel = "COLUMN",
      description = "Setting before a correction (before).")
  private @Nullable String before;

  @Option(
      names = "--after-column",
      paramLabel = "COLUMN",
      description = "Setting after it (after).")
  private @Nullable String after;

  @Mixin private CsvOptions csv = new CsvOptions();

  /** What is said of the file. */
  CsvOptions csv() {
    return csv;
  }

  RowCells in(CsvColumns columns) {
    RowCells cells = new RowCells(columns);
    cells.put(Meaning.RADIUS, columns.find("--column", radius));
    cells.put(
        Meaning.UNCERTAINTY, find(columns, "--uncertainty-column", uncertainty, "uncertainty"));
    cells.put(Meaning.PIECE, find(columns, "--piece-column", piece, "piece"));
    cells.put(Meaning.POSITION, find(columns, "--position-column", position, "position"));
    cells.put(Meaning.SET_UP, find(columns, "--set-up-column", setUp, "setUp"));
    cells.put(Meaning.LOT, find(columns, "--lot-column", lot, "lot"));
    cells.put(Meaning.YIELD, find(columns, "--yield-column", yields, "yieldMpa"));
    cells.put(Meaning.BEFORE, find(columns, "--before-column", before, "before"));
    cells.put(Meaning.AFTER, find(columns, "--after-column", after, "after"));
    return cells;
  }

  private static int find(CsvColumns columns, String option, @Nullable String named, String usual) {
    return named == null ? columns.index(usual) : columns.find(option, named);
  }
}
