package org.chordlog.study;

import java.util.List;
import org.chordlog.study.StudyResult.Size;

/** A complete table: value by part, operator and repeat. */
@SuppressWarnings("ArrayRecordComponent") // never compared
record CrossedTable(Cells cells, List<String> parts, List<String> operators, double[][][] values) {

  /** {@link org.chordlog.measure.BadInput} for fewer than two parts and for a missing cell. */
  static CrossedTable of(List<StudyReading> readings) {
    Cells cells = new Cells(readings);
    List<String> parts = cells.names(StudyReading::part);
    List<String> operators = cells.names(StudyReading::operator);
    Cells.atLeast("part", parts, 2, " pieces");
    double[][][] values =
        parts.stream().map(part -> row(cells, part, operators)).toArray(double[][][]::new);
    return new CrossedTable(cells, parts, operators, values);
  }

  /** As {@link #of}, with two operators or more. */
  static CrossedTable ofSeveralOperators(List<StudyReading> readings) {
    CrossedTable table = of(readings);
    Cells.atLeast("operator", table.operators, 2, " operators, or the study of one operator");
    return table;
  }

  private static double[][] row(Cells cells, String part, List<String> operators) {
    return operators.stream()
        .map(operator -> cells.values(part, "", operator))
        .toArray(double[][]::new);
  }

  int repeats() {
    return cells.repeats();
  }

  Size size() {
    return new Size(parts.size(), operators.size(), repeats(), design());
  }

  private String design() {
    return parts.size()
        + " pieces × "
        + operators.size()
        + " operator"
        + (operators.size() == 1 ? "" : "s")
        + " × "
        + repeats()
        + " repeats";
  }
}
