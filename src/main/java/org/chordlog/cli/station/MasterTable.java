package org.chordlog.cli.station;

import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.NumberText;

/** Rows of a file of readings on masters; a fault names row and column. */
final class MasterTable {
  private final CsvColumns columns;
  private final LengthOptions lengths;

  /** Columns of lengths are in the unit of these options. */
  MasterTable(CsvColumns columns, LengthOptions lengths) {
    this.columns = columns;
    this.lengths = lengths;
  }

  int rows() {
    return columns.rows();
  }

  String place(int row, String name) {
    return "row " + columns.line(row) + ", column " + name;
  }

  private int at(String name) {
    return columns.index(name);
  }

  double number(int row, String name) {
    String cell = cell(row, name);
    Double value = NumberText.read(cell);
    if (value == null) {
      String allowed = "a number, decimal point or comma";
      throw new BadInput(place(row, name), "'" + cell + "'", "is not a number", allowed);
    }
    return value;
  }

  double number(int row, String name, double absent) {
    return at(name) < 0 ? absent : number(row, name);
  }

  private String cell(int row, String name) {
    int at = at(name) >= 0 ? at(name) : columns.find("column " + name, name);
    return columns.numeral(row, at);
  }

  double mm(int row, String name) {
    return lengths.cellMm(place(row, name), cell(row, name));
  }

  /** {@code absentMm} where the file has no such column. */
  double mm(int row, String name, double absentMm) {
    return at(name) < 0 ? absentMm : mm(row, name);
  }

  String text(int row, String name, String absent) {
    String cell = at(name) < 0 ? "" : columns.cell(row, at(name)).strip();
    return cell.isEmpty() ? absent : cell;
  }

  double[] numbers(String name) {
    double[] numbers = new double[rows()];
    for (int row = 0; row < numbers.length; row++) {
      numbers[row] = number(row, name);
    }
    return numbers;
  }
}
