package org.chordlog.cli.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.NumberText;
import org.chordlog.study.StudyReading;

/** Rows of a study's file by the names of its columns; a fault names row and column. */
final class StudyTable {
  private final CsvColumns columns;

  StudyTable(CsvColumns columns) {
    this.columns = columns;
  }

  int rows() {
    return columns.rows();
  }

  /** Line of the file that a row begins on. */
  long line(int row) {
    return columns.line(row);
  }

  boolean has(String name) {
    return columns.has(name);
  }

  private int required(String name) {
    return columns.find("column " + name, name);
  }

  double number(int row, String name) {
    String cell = columns.numeral(row, required(name));
    Double value = NumberText.read(cell);
    if (value == null) {
      throw new BadInput(
          place(row, name),
          "'" + cell + "'",
          "is not a number",
          "a number, decimal point or comma");
    }
    return value;
  }

  String text(int row, String name) {
    String cell = columns.cell(row, required(name)).strip();
    if (cell.isEmpty()) {
      throw new BadInput(place(row, name), "nothing", "is there", "a name");
    }
    return cell;
  }

  private String cell(int row, String name) {
    return has(name) ? columns.cell(row, required(name)).strip() : "";
  }

  /** Empty where the file has no such column. */
  String textOrNone(int row, String name) {
    return has(name) ? text(row, name) : "";
  }

  /** Infinite for a stated uncertainty: an empty cell, {@code inf}, or no such column. */
  double degreesOfFreedom(int row) {
    String cell = cell(row, "degrees");
    if (cell.isEmpty() || cell.equalsIgnoreCase("inf")) {
      return Double.POSITIVE_INFINITY;
    }
    double degrees = number(row, "degrees");
    if (!(degrees > 0)) {
      throw new BadInput(place(row, "degrees"), degrees, "is not above 0", "above 0, or inf");
    }
    return degrees;
  }

  private String place(int row, String name) {
    return "row " + columns.line(row) + ", column " + name;
  }

  double[] numbers(String name) {
    double[] numbers = new double[rows()];
    for (int row = 0; row < numbers.length; row++) {
      numbers[row] = number(row, name);
    }
    return numbers;
  }

  /** What the columns of a reading are called. */
  record Names(String part, String operator) {
    static final Names USUAL = new Names("part", "operator");
    static final Names STABILITY = new Names("day", "run");
  }

  /**
   * Readings with the value of each row; repeats are counted where the file does not number them.
   */
  List<StudyReading> readings(Names names, boolean places, double[] values) {
    List<StudyReading> readings = new ArrayList<>();
    Map<String, Integer> counts = new HashMap<>();
    for (int row = 0; row < rows(); row++) {
      String part = text(row, names.part());
      String place = places ? text(row, "place") : "";
      String operator = textOrNone(row, names.operator());
      int seen = counts.merge(part + "\n" + place + "\n" + operator, 1, Integer::sum);
      int repeat = has("repeat") ? whole(row, "repeat") : seen;
      long order = has("order") ? whole(row, "order") : 0;
      readings.add(new StudyReading(part, place, operator, repeat, order, values[row]));
    }
    return readings;
  }

  private int whole(int row, String name) {
    double value = number(row, name);
    if (value < 1 || value != Math.rint(value) || value > Integer.MAX_VALUE) {
      throw new BadInput(place(row, name), value, "is not a count", "1, 2, 3 …");
    }
    return (int) value;
  }
}
