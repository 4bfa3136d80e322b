package org.chordlog.cli.gauge;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/** Radii for a column of depths in a CSV file with a header line. */
record RadiusColumn(
    RadiusModel model,
    Specification specification,
    LengthOptions lengths,
    long scatterNm,
    int samples) {
  /** A row's outcome: either a radius with its decision, or a fault. */
  record Row(
      long line,
      String depth,
      @Nullable RadiusEstimate radius,
      @Nullable Decision decision,
      @Nullable String fault) {
    boolean isWell() {
      return fault == null && decision != Decision.DOES_NOT_CONFORM;
    }
  }

  List<Row> read(Path file, CsvOptions options, String column) {
    CsvColumns columns = CsvColumns.read("--csv", file, options);
    int at = columns.find("--column", column);
    refuseOtherUnit(columns.name(at));
    List<Row> rows = new ArrayList<>();
    for (int row = 0; row < columns.rows(); row++) {
      rows.add(row(columns, row, at));
    }
    return rows;
  }

  /** 0.1 in taken as 0.1 mm would be another radius, and a plausible one. */
  private void refuseOtherUnit(String name) {
    String unit = name.endsWith("_in") ? "in" : name.endsWith("_mm") ? "mm" : lengths.sign();
    if (!unit.equals(lengths.sign())) {
      boolean inch = unit.equals("in");
      String problem = "is in " + (inch ? "inches" : "mm") + " by its name";
      throw new BadInput("--column", name, problem, "--unit " + (inch ? "inch" : "mm"));
    }
  }

  private Row row(CsvColumns columns, int row, int column) {
    long line = columns.line(row);
    String depth = columns.cell(row, column).strip();
    try {
      double depthMm = lengths.cellMm("depth", columns.numeral(row, column));
      RadiusEstimate e = model.estimate(Length.nm(depthMm), scatterNm, samples);
      return new Row(line, depth, e, model.decide(e, specification), null);
    } catch (BadInput refusal) {
      return new Row(line, depth, null, null, lengths.inUnit(refusal).getMessage());
    }
  }

  void print(List<Row> rows, PrintWriter out) {
    String unit = lengths.metric() ? "mm" : "in";
    out.printf(
        Locale.ROOT, "line,depth_%1$s,radius_%1$s,lower_%1$s,upper_%1$s,decision,fault%n", unit);
    rows.forEach(row -> out.println(String.join(",", cells(row))));
  }

  private List<String> cells(Row row) {
    RadiusEstimate e = row.radius();
    String line = Long.toString(row.line());
    if (e == null) {
      return List.of(line, quoted(row.depth()), "", "", "", "", quoted("" + row.fault()));
    }
    Double radius = e.radiusMm();
    Double upper = e.upperMm();
    double expanded = RadiusText.expandedMm(e);
    return List.of(
        line,
        quoted(row.depth()),
        radius == null ? "" : lengths.byUncertainty(radius, expanded),
        lengths.byUncertainty(e.lowerMm(), expanded),
        upper == null ? "" : lengths.byUncertainty(upper, expanded),
        radius == null ? "flat" : "" + row.decision(),
        "");
  }

  private static String quoted(String text) {
    return text.matches("[-+.\\w]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
