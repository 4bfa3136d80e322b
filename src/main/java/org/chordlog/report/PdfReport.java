package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;

/** A job as a PDF on A4; laid out twice, since each page names the count of pages. */
public final class PdfReport {
  private static final float MARGIN = 40;
  private static final float FOOT = 52;

  private final JobReport report;
  private final int pages;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final Runnable rowDone;
  private int written;

  private PdfReport(JobReport report, int pages, Runnable rowDone) {
    this.report = report;
    this.pages = pages;
    this.rowDone = rowDone;
  }

  /** Equal reports give equal bytes. */
  public static byte[] write(JobReport report) {
    return write(report, () -> {});
  }

  /** The same; {@code rowDone} is called for each reading laid out, twice for all. */
  public static byte[] write(JobReport report, Runnable rowDone) {
    PdfReport counting = new PdfReport(report, 0, rowDone);
    counting.write();
    PdfReport last = new PdfReport(report, counting.written, rowDone);
    last.write();
    return StablePdf.settle(last.out.toByteArray());
  }

  private void write() {
    Document document = new Document(PageSize.A4, MARGIN, MARGIN, MARGIN, FOOT);
    PdfWriter writer = PdfWriter.getInstance(document, out);
    Paper paper = new Paper(document, writer, new Type());
    writer.setPageEvent(new PageFoot(paper.type, report.job().name(), made(), pages));
    document.addTitle("Certificate: " + report.job().name());
    document.addSubject("Radius of roll-bent pieces");
    document.addCreator("Chordlog");
    document.open();
    date(writer);
    sections(paper, writer);
    written = writer.getPageNumber();
    document.close();
  }

  private void sections(Paper paper, PdfWriter writer) {
    CertificateSection.write(report, paper);
    paper.newPage();
    CautionsSection.write(report, paper);
    GaugeSection.write(report, paper);
    FiguresSection.write(report, paper);
    ChartsSection.write(report, paper, writer);
    FiguresSection.writeByPosition(report, paper);
    PartsSection.write(report, paper);
    HistorySection.write(report, paper);
    NotesSection.write(report, paper);
    if (report.printing().withReadings()) {
      ReadingsSection.write(report, paper, rowDone);
    }
    if (paper.type.missed()) {
      paper.text(
          "□ stands for a character that the font of this report does not hold; the CSV export has"
              + " it.");
    }
  }

  private String made() {
    return "made %s %s"
        .formatted(Print.time(report.printing().madeAt(), report.zone()), report.zone().getId());
  }

  private void date(PdfWriter writer) {
    PdfString date =
        new PdfDate(
            GregorianCalendar.from(
                ZonedDateTime.ofInstant(report.printing().madeAt(), report.zone())));
    writer.getInfo().put(PdfName.CREATIONDATE, date);
    writer.getInfo().put(PdfName.MODDATE, date);
  }
}
