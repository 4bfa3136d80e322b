package org.chordlog.report;

import com.lowagie.text.Element;
import com.lowagie.text.Image;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Graphics2D;
import java.util.List;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Job;
import org.chordlog.stats.control.StatisticsPlan;

/** The pictures as vectors, each with its name. */
final class ChartsSection {
  private static final List<PictureKind> SHOWN =
      List.of(
          PictureKind.MEAN_AND_RANGE,
          PictureKind.INDIVIDUALS_AND_MOVING_RANGE,
          PictureKind.EWMA,
          PictureKind.CUSUM,
          PictureKind.DISTRIBUTION,
          PictureKind.POSITIONS,
          PictureKind.PROFILES,
          PictureKind.CORRECTIONS);
  private static final float WIDTH_PX = 860;

  private ChartsSection() {}

  static void write(JobReport report, Paper paper, PdfWriter writer) {
    if (report.readingCount() < 2) {
      paper.heading("Charts");
      paper.text("Charts begin with the second reading.");
      return;
    }
    for (PictureKind kind : SHOWN) {
      draw(kind, report.charts(), paper, writer);
    }
    paper.text(settings(report.job()));
  }

  /** Nothing where the source has not what it shows. */
  static void draw(PictureKind kind, ChartSource source, Paper paper, PdfWriter writer) {
    draw(kind, kind.title(), source, paper, writer);
  }

  /** The same under another title. */
  static void draw(
      PictureKind kind, String title, ChartSource source, Paper paper, PdfWriter writer) {
    kind.draw(source).ifPresent(drawing -> paper.add(picture(title, drawing, paper, writer)));
  }

  private static String settings(Job job) {
    return StatisticsPlan.ofRadius(job.specification(), job.plan()).charts().sentence();
  }

  private static PdfPTable picture(String title, Drawing drawing, Paper paper, PdfWriter writer) {
    float height = drawing.panels() > 1 ? 450 : 300;
    PdfTemplate template = writer.getDirectContent().createTemplate(WIDTH_PX, height);
    Graphics2D pen = new ChartPen(template, WIDTH_PX, height, paper.type);
    drawing.draw(pen, WIDTH_PX, height);
    pen.dispose();
    Image image = Image.getInstance(template);
    image.scaleToFit(paper.width(), height);
    PdfPTable table = paper.table(1);
    table.setKeepTogether(true);
    table.setSpacingBefore(10);
    table.addCell(paper.headingCell(title));
    PdfPCell cell = new PdfPCell(image, false);
    cell.setBorder(Rectangle.NO_BORDER);
    cell.setHorizontalAlignment(Element.ALIGN_CENTER);
    cell.setPaddingBottom(10);
    table.addCell(cell);
    return table;
  }
}
