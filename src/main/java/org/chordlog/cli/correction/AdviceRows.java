package org.chordlog.cli.correction;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.cli.correction.RowCells.Meaning;
import org.chordlog.correction.Advice;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.GainEstimate;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Told.Correction;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** The rows of a CSV file to what the corrector is told, with the advice after each piece. */
final class AdviceRows {
  private static final String FLAT = "flat";
  private static final Set<String> YES = Set.of("x", "yes", "y", "true", "1");
  private static final Set<String> NO = Set.of("no", "n", "false", "0");

  /** Advice after a row, counted as lines of the file; {@code piece} 0 after an event alone. */
  record Row(long line, int piece, AdviceAnswer advice) {}

  private final LengthOptions lengths;
  private final Corrector corrector;
  private final RowOptions options;
  private final double uncertaintyMm;
  private final double targetMm;
  private final LotYields yields;
  private final List<Row> rows = new ArrayList<>();
  private final List<String> refused = new ArrayList<>();
  private final List<String> excluded = new ArrayList<>();
  private final List<PieceReading> readings = new ArrayList<>();
  private String lot;
  private int piece;
  private int last;
  private long pieceLine;

  AdviceRows(JobOptions job, ScaleOptions scale, RowOptions options) {
    this.options = options;
    lengths = job.lengths();
    targetMm = job.targetMm();
    uncertaintyMm = job.uncertaintyMm();
    corrector = new Corrector(scale.scale(targetMm, lengths), job.tuning());
    corrector.tell(job.start());
    lot = job.start().lot();
    yields = new LotYields(job);
  }

  void read(Path file) {
    CsvColumns columns = CsvColumns.withoutSummaries("FILE", file, options.csv());
    columns
        .summaries()
        .forEach(
            line ->
                excluded.add(
                    "row "
                        + line
                        + ": sums up others, so it does not count (--all-rows takes it)"));
    RowCells cells = options.in(columns);
    if (cells.hasAny(Meaning.YIELD)) {
      yields.requireCertificates();
    }
    for (int row = 0; row < cells.rows(); row++) {
      try {
        if (cells.isExcluded(row)) {
          excluded.add("row " + cells.line(row) + ": excluded, so it does not count");
          continue;
        }
        take(cells, row);
        last = row;
      } catch (BadInput bad) {
        refused.add("row " + cells.line(row) + ": " + lengths.inUnit(bad).getMessage());
      }
    }
    closePiece();
  }

  private void take(RowCells cells, int row) {
    Double yieldMpa = LotYields.cell(cells.numeral(Meaning.YIELD, row));
    List<Told> events = events(cells, row, yieldMpa);
    if (goesOn(cells, row)) {
      if (!events.isEmpty()) {
        throw new BadInput(
            "row", cells.line(row), "changes something within a piece", "before its first reading");
      }
    } else {
      closePiece();
    }
    named(cells.text(Meaning.LOT, row), yieldMpa);
    events.forEach(corrector::tell);
    measured(cells, row, !events.isEmpty());
  }

  private void named(String named, @Nullable Double yieldMpa) {
    if (isAnother(named)) {
      lot = named;
      yields.changed(yieldMpa);
    } else {
      yields.repeated(yieldMpa);
    }
  }

  private boolean isAnother(String named) {
    return !named.isEmpty() && !named.equals(lot);
  }

  /** Whether the row belongs to the piece of the row before that counts. */
  private boolean goesOn(RowCells cells, int row) {
    return !readings.isEmpty()
        && cells.has(Meaning.PIECE)
        && cells.text(Meaning.PIECE, row).equals(cells.text(Meaning.PIECE, last));
  }

  private void measured(RowCells cells, int row, boolean anyEvent) {
    String radius = cells.numeral(Meaning.RADIUS, row);
    if (!radius.isEmpty()) {
      readings.add(reading(cells, row, radius));
      pieceLine = cells.line(row);
    } else if (anyEvent) {
      rows.add(new Row(cells.line(row), 0, answer()));
    } else {
      throw new BadInput(
          "radius", "none", "is missing, and nothing else is told", "a radius, flat");
    }
  }

  private List<Told> events(RowCells cells, int row, @Nullable Double yieldMpa) {
    List<Told> events = new ArrayList<>();
    if (isSetUp(cells.text(Meaning.SET_UP, row))) {
      events.add(new Told.SetUp(null));
    }
    String named = cells.text(Meaning.LOT, row);
    if (isAnother(named)) {
      events.add(yields.next(named, yieldMpa, targetMm));
    }
    String before = cells.numeral(Meaning.BEFORE, row);
    String after = cells.numeral(Meaning.AFTER, row);
    if (before.isEmpty() != after.isEmpty()) {
      throw new BadInput(
          before.isEmpty() ? "before" : "after", "none", "is missing", "both settings, or neither");
    }
    if (!before.isEmpty()) {
      events.add(
          Correction.between(TypedNumber.cell("before", before), TypedNumber.cell("after", after)));
    }
    return events;
  }

  /** A spreadsheet fills the column in each row, also where there was none. */
  private static boolean isSetUp(String text) {
    String said = text.toLowerCase(Locale.ROOT);
    if (!said.isEmpty() && !YES.contains(said) && !NO.contains(said)) {
      throw new BadInput("set up", text, "is neither yes nor no", "x, yes, true, 1, no, false, 0");
    }
    return YES.contains(said);
  }

  private PieceReading reading(RowCells cells, int row, String radius) {
    String stated = cells.numeral(Meaning.UNCERTAINTY, row);
    double u = stated.isEmpty() ? uncertaintyMm : lengths.cellMm("uncertainty", stated);
    PieceReading reading =
        radius.toLowerCase(Locale.ROOT).equals(FLAT)
            ? PieceReading.flat(u / targetMm / targetMm)
            : PieceReading.radius(lengths.cellMm("radius", radius), u);
    return reading.at(cells.text(Meaning.POSITION, row), 1);
  }

  private void closePiece() {
    if (!readings.isEmpty()) {
      corrector.tell(new Told.Piece(++piece, readings));
      readings.clear();
      rows.add(new Row(pieceLine, piece, answer()));
    }
  }

  private AdviceAnswer answer() {
    return AdviceAnswer.of(corrector.snapshot(), lengths.lengths());
  }

  /** One sentence for each row that was left out. */
  List<String> refused() {
    return refused;
  }

  /** One sentence for each row that its file says does not count. */
  List<String> excluded() {
    return excluded;
  }

  Map<String, Object> json() {
    CorrectionSnapshot now = corrector.snapshot();
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("rows", rows);
    json.put("now", answer());
    json.put("gain", now.learned().gain());
    json.put("scatterMm", now.learned().scatterMm());
    json.put("readiness", now.learned().readiness());
    json.put("promises", now.learned().promises());
    json.put("refused", refused);
    json.put("caution", Advice.caution());
    return json;
  }

  String text() {
    StringBuilder text = new StringBuilder();
    rows.forEach(row -> text.append(line(row)).append(System.lineSeparator()));
    CorrectionSnapshot now = corrector.snapshot();
    GainEstimate gain = now.learned().gain();
    if (gain != null && gain.known()) {
      text.append(gain(gain, now)).append(System.lineSeparator());
    }
    return text.append(Advice.caution()).toString();
  }

  private static String line(Row row) {
    String piece = row.piece() == 0 ? "" : "piece " + row.piece();
    StringBuilder line = new StringBuilder();
    line.append(
        String.format(
            Locale.ROOT,
            "row %-5d %-11s %-15s %s",
            row.line(),
            piece,
            row.advice().action(),
            row.advice().text()));
    row.advice().notices().forEach(notice -> line.append(' ').append(notice.text()));
    return line.toString();
  }

  private String gain(GainEstimate gain, CorrectionSnapshot now) {
    double expanded = 2 * gain.standardUncertaintyMmPerUnit();
    return Sentence.of(
            "On the %s, %s changes the radius by %s (± %s). Pieces vary by %s.",
            now.learned().scale().name(),
            now.learned().scale().oneUnit(),
            Quantity.of(gain.radiusMmPerUnit(), expanded),
            Quantity.uncertainty(expanded).withoutUnit(),
            Quantity.uncertainty(now.learned().scatterMm()))
        .in(lengths.lengths());
  }
}
