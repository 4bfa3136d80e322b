package org.chordlog.cli.gauge;

import java.nio.file.Path;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.CountLength;
import org.chordlog.profile.CountScale;

/**
 * A recorded stream: columns {@code time_s}, {@code depth_mm} (less its zero), and {@code
 * length_mm} or {@code count}. What can't be read, or times that don't rise, are refused with their
 * row.
 */
final class LineRows {
  private final CsvColumns columns;
  private final LineOptions options;
  private final LengthSource source;
  private final long[] nanos;
  private final long[] lengthsNm;
  private final long[] depthsNm;

  /** Seconds whose nanoseconds fit a long. */
  private static final double MOST = 9e9;

  private LineRows(CsvColumns columns, LineOptions options, LengthSource source) {
    this.columns = columns;
    this.options = options;
    this.source = source;
    nanos = new long[columns.rows()];
    lengthsNm = new long[columns.rows()];
    depthsNm = new long[columns.rows()];
  }

  static LineRows read(Path file, LineOptions options, LengthOptions lengths) {
    CountScale scale = options.scale();
    CsvColumns columns = CsvColumns.read("FILE", file, options.csv);
    boolean length = columns.has("length_mm");
    boolean count = columns.has("count");
    if (!length && !count && options.feed == null) {
      throw new BadInput(
          "FILE", file, "has no column length_mm and none named count", "one of them, or --feed");
    }
    LengthSource measured = options.oneWay ? LengthSource.PULSE : LengthSource.CHANNEL;
    LineRows rows = new LineRows(columns, options, length || count ? measured : LengthSource.SPEED);
    rows.times(columns.find("FILE", "time_s"));
    rows.depths(columns.find("FILE", "depth_mm"));
    if (length) {
      rows.lengths(columns.find("FILE", "length_mm"));
    } else if (count) {
      rows.counts(columns.find("FILE", "count"), scale);
    } else {
      rows.feed(lengths.mm("--feed", String.valueOf(options.feed)));
    }
    return rows;
  }

  private void times(int column) {
    for (int row = 0; row < nanos.length; row++) {
      nanos[row] = Math.round(measured("time_s", row, column) * 1e9);
      if (row > 0 && nanos[row] <= nanos[row - 1]) {
        throw bad("time_s", row, column, "is not after the row before", "times that rise");
      }
    }
  }

  private void depths(int column) {
    for (int row = 0; row < depthsNm.length; row++) {
      depthsNm[row] = Length.nm(measured("depth_mm", row, column));
    }
  }

  private void lengths(int column) {
    for (int row = 0; row < lengthsNm.length; row++) {
      double mm = measured("length_mm", row, column);
      lengthsNm[row] = Length.nm(options.reversed() ? -mm : mm);
      checkDirection("length_mm", row, column);
    }
  }

  private void counts(int column, CountScale scale) {
    CountLength length = new CountLength(scale);
    for (int row = 0; row < lengthsNm.length; row++) {
      double count = number("count", row, column);
      if (count != Math.rint(count)) {
        throw bad("count", row, column, "is not a whole number", "whole counts");
      }
      lengthsNm[row] = length.lengthNm((long) count);
      checkDirection("count", row, column);
    }
  }

  private void feed(double mmPerSecond) {
    for (int row = 0; row < lengthsNm.length; row++) {
      lengthsNm[row] = Math.round(nanos[row] / 1e3 * mmPerSecond);
    }
  }

  private void checkDirection(String name, int row, int column) {
    if (options.oneWay && row > 0 && lengthsNm[row] < lengthsNm[row - 1]) {
      throw bad(name, row, column, "runs backwards", "a length that never falls (--one-way)");
    }
  }

  private double measured(String name, int row, int column) {
    double number = number(name, row, column);
    if (Math.abs(number) > MOST) {
      throw bad(name, row, column, "is too large", "numbers below 9000 million");
    }
    return number;
  }

  private double number(String name, int row, int column) {
    Double number = columns.number(row, column);
    if (number == null) {
      throw bad(name, row, column, "is not a number", "a number in each row");
    }
    return number;
  }

  private BadInput bad(String name, int row, int column, String problem, String allowed) {
    String cell = "'" + columns.cell(row, column) + "' in row " + columns.line(row);
    return new BadInput(name, cell, problem, allowed);
  }

  int size() {
    return nanos.length;
  }

  LengthSource source() {
    return source;
  }

  /** Row of the file. */
  long line(int row) {
    return columns.line(row);
  }

  long nanos(int row) {
    return nanos[row];
  }

  long lengthNm(int row) {
    return lengthsNm[row];
  }

  long depthNm(int row) {
    return depthsNm[row];
  }
}
