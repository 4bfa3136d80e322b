package org.chordlog.cli.gauge;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/** Radii for a column of depths in a CSV file with a header line; comma or semicolon. */
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
      @Nullable String fault) {}

  List<Row> read(Path file, String column) throws IOException {
    if (!Files.isReadable(file)) {
      throw new BadInput("--csv", file, "can't be read", "a CSV file with a header line");
    }
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format(file))) {
      if (!parser.getHeaderMap().containsKey(column)) {
        throw new BadInput("--column", column, "is not there", "" + parser.getHeaderNames());
      }
      List<Row> rows = new ArrayList<>();
      for (CSVRecord row : parser) {
        rows.add(row(parser.getCurrentLineNumber(), row.isSet(column) ? row.get(column) : ""));
      }
      return rows;
    }
  }

  private static CSVFormat format(Path file) throws IOException {
    String header;
    try (var lines = Files.lines(file, StandardCharsets.UTF_8)) {
      header = lines.findFirst().orElse("");
    }
    return CSVFormat.DEFAULT
        .builder()
        .setDelimiter(header.contains(";") ? ';' : ',')
        .setHeader()
        .setSkipHeaderRecord(true)
        .setTrim(true)
        .get();
  }

  private Row row(long line, String depth) {
    try {
      double depthMm = lengths.mm("depth", depth);
      RadiusEstimate e = model.estimate(Length.nm(depthMm), scatterNm, samples);
      return new Row(line, depth, e, model.decide(e, specification), null);
    } catch (BadInput refusal) {
      return new Row(line, depth, null, null, refusal.getMessage());
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
    return List.of(
        line,
        quoted(row.depth()),
        radius == null ? "" : lengths.text(radius, 3),
        lengths.text(e.lowerMm(), 3),
        upper == null ? "" : lengths.text(upper, 3),
        radius == null ? "flat" : "" + row.decision(),
        "");
  }

  private static String quoted(String text) {
    return text.matches("[-+.\\w]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
