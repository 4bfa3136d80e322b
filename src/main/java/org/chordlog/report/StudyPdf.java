package org.chordlog.report;

import java.util.List;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.GaugeStudy;

/**
 * A complete study of the gauge as a PDF of at most {@value #MOST_PAGES} pages on A4: the first
 * says it all, then its charts, then all figures.
 */
public final class StudyPdf {
  static final int MOST_PAGES = 3;

  /** So many figures are left out at a time until the rest fits. */
  private static final int FEWER = 6;

  private static final List<PictureKind> SHOWN =
      List.of(PictureKind.STUDY_READINGS, PictureKind.STUDY_COMPONENTS, PictureKind.STUDY_BIAS);

  private static final String SYMBOLS =
      "EV repeatability, AV operators, IA interaction, GRR gauge in all, PV pieces, TV all together."
          + " With few operators or pieces the intervals are long.";

  private static final String OF_PLACES =
      "PVpiece pieces, PVplace places on a piece, IAplace interaction of operator and place. ";

  private StudyPdf() {}

  /** Equal reports give equal bytes. Where not all figures fit, it says how many are left out. */
  public static byte[] write(StudyReport report) {
    int rows = report.result().figures().size();
    PdfPages.Laid laid = lay(report, rows);
    while (laid.pages() > MOST_PAGES && rows > 0) {
      rows = Math.max(0, rows - FEWER);
      laid = lay(report, rows);
    }
    return laid.bytes();
  }

  private static PdfPages.Laid lay(StudyReport report, int rows) {
    String name = report.study().name();
    PdfPages.Head head =
        new PdfPages.Head(
            name,
            "Study of the gauge: " + name,
            "Gauge study",
            report.printing().madeAt(),
            report.printing().zone());
    return PdfPages.lay(
        head,
        (paper, writer) -> {
          new StudySummarySection(report, paper).write();
          paper.newPage();
          SHOWN.forEach(kind -> ChartsSection.draw(kind, report.chartsInUnit(), paper, writer));
          symbols(report.study().design().kind(), paper);
          new StudyFiguresSection(report, paper).writeAll(rows);
        });
  }

  /** Nothing where the charts name what scatters in words. */
  private static void symbols(GaugeStudy.Kind kind, Paper paper) {
    if (!kind.onMasters() && kind != GaugeStudy.Kind.PLACING) {
      paper.text((kind == GaugeStudy.Kind.SPLIT ? OF_PLACES : "") + SYMBOLS);
    }
  }
}
