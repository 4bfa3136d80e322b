package org.chordlog.study;

import java.util.List;
import java.util.function.Function;
import org.chordlog.measure.BadInput;

/** A complete table of groups, each with members of its own: value by group, member, repeat. */
@SuppressWarnings("ArrayRecordComponent") // never compared
record NestedTable(Cells cells, List<String> groups, double[][][] values) {

  /** Operators with parts of their own; equal names under two operators are two parts. */
  static NestedTable of(List<StudyReading> readings) {
    Cells cells = new Cells(readings);
    List<String> operators = cells.names(StudyReading::operator);
    int parts = members(cells, operators.get(0)).size();
    double[][][] values =
        operators.stream()
            .map(operator -> group(cells, operator, parts))
            .toArray(double[][][]::new);
    return new NestedTable(cells, operators, values);
  }

  private static List<String> members(Cells cells, String operator) {
    Function<StudyReading, String> part = StudyReading::part;
    return cells.readings().stream()
        .filter(reading -> reading.operator().equals(operator))
        .map(part)
        .distinct()
        .toList();
  }

  private static double[][] group(Cells cells, String operator, int expected) {
    List<String> parts = members(cells, operator);
    if (parts.size() != expected) {
      throw new BadInput(
          "operator " + operator,
          parts.size() + " of " + expected + " pieces",
          "are there",
          "as many pieces with every operator as with the first: measure the missing ones");
    }
    return parts.stream().map(part -> cells.values(part, "", operator)).toArray(double[][]::new);
  }

  int members() {
    return values[0].length;
  }
}
