package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import java.util.List;
import java.util.Locale;
import org.chordlog.chart.PictureKind;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Face;
import org.chordlog.measure.Sentence;
import org.chordlog.verdict.RollerFigures;
import org.chordlog.verdict.Statement;
import org.jspecify.annotations.Nullable;

/**
 * Of a job whose pieces ran through a gauge in a line: how even they are along their length, and
 * which roller makes a ripple.
 */
final class LineSection {
  private static final String RIPPLES =
      "Moving average of the evidence that the roller makes a ripple; 1 without one. A diamond is"
          + " above its limit.";
  private static final String SPECTRUM =
      "Of the newest pieces, as the bridge shows it. Shaded: where each roller would show, slip of"
          + " 2 % allowed for.";

  /** A heading, a statement and a chart of two panels, points. */
  private static final float WITH_CHART = 370;

  private final JobReport report;
  private final Paper paper;
  private final PdfWriter writer;

  private LineSection(JobReport report, Paper paper, PdfWriter writer) {
    this.report = report;
    this.paper = paper;
    this.writer = writer;
  }

  static void write(JobReport report, Paper paper, PdfWriter writer) {
    LineSection section = new LineSection(report, paper, writer);
    report.statistics().line().ifPresent(section::write);
  }

  private void write(JobReport.OfLine line) {
    line.along().forEach(this::along);
    rollers(line);
  }

  private void along(JobReport.Along along) {
    paper.heading("Along the pieces · " + along.title() + ", % of curvature", WITH_CHART);
    statement(along.statement());
    along.causes().forEach(each -> paper.text(each.words(report.printing().zone())));
    PictureKind kind = PictureKind.INDIVIDUALS_AND_MOVING_RANGE;
    String title = kind.title() + " of " + along.title();
    ChartsSection.draw(kind, title, report.printing().unit().of(along.charts()), paper, writer);
    paper.text(along.settings());
  }

  private void rollers(JobReport.OfLine line) {
    paper.heading("Does a roller run out?");
    statement(line.rollers());
    if (!line.figures().isEmpty()) {
      paper.add(table(line.figures()));
      unseen(line.figures());
    }
    picture(PictureKind.ROLLER_RIPPLES, RIPPLES);
    picture(PictureKind.ROLLER_SPECTRUM, SPECTRUM);
  }

  private void statement(Statement said) {
    paper.large(said.word());
    Sentence all = said.reason().and(said.advice());
    if (!all.isEmpty()) {
      paper.text(report.lengths().said(all));
    }
  }

  /** Nothing where there is no such picture. */
  private void picture(PictureKind kind, String caption) {
    if (kind.draw(report.charts()).isPresent()) {
      ChartsSection.draw(kind, report.charts(), paper, writer);
      paper.text(caption);
    }
  }

  private PdfPTable table(List<RollerFigures> figures) {
    PdfPTable table =
        paper.table(
            Column.words("roller", 2.2),
            Column.number(report.lengths().heading("diameter"), 1.4),
            Column.words("runs on", 1.9),
            Column.number(report.lengths().heading("wavelength"), 1.6),
            Column.number("ripple, % of curvature", 2.2),
            Column.number("chance alone", 1.4),
            Column.words("chart above its limit", 2));
    figures.forEach(each -> row(table, each));
    return table;
  }

  private void row(PdfPTable table, RollerFigures known) {
    paper.strong(table, known.roller().name(), Paper.INK);
    paper.right(table, report.lengths().bare(known.roller().diameterMm()));
    String face = known.roller().side() == Face.INNER ? "inner face" : "outer face";
    paper.row(table, known.roller().driven() ? face + ", driven" : face);
    paper.right(table, wavelength(known));
    paper.right(table, ripple(known));
    paper.right(table, chance(known.probability()));
    long above = known.aboveLimitFor();
    paper.row(table, above == 0 ? "no" : "for " + Print.counted(above, "piece"));
  }

  private String wavelength(RollerFigures known) {
    ViewUnit unit = report.printing().unit();
    return Print.number(unit.orNull(known.wavelengthMm()), unit == ViewUnit.MM ? 0 : 1);
  }

  private static String ripple(RollerFigures known) {
    Double amplitude = known.amplitudePercent();
    return amplitude == null
        ? (known.unseen() == null ? Print.NONE : "not seen")
        : String.format(Locale.ROOT, "%.2f ± %.2f", amplitude, known.uncertaintyPercent());
  }

  private static String chance(@Nullable Double probability) {
    return probability != null && probability < 0.001
        ? "below 0.001"
        : Print.number(probability, 3);
  }

  private void unseen(List<RollerFigures> figures) {
    for (RollerFigures known : figures) {
      if (known.unseen() != null) {
        paper.text("Not seen: " + known.roller().name() + ", " + known.unseen() + ".");
      }
    }
  }
}
