package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.function.BiConsumer;

/** Pages of A4 with a foot; laid out twice, since each page names the count of pages. */
final class PdfPages {
  private static final float MARGIN = 40;
  private static final float FOOT = 52;

  private final Head head;
  private final BiConsumer<Paper, PdfWriter> sections;
  private final int pages;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private int written;

  /** {@code of} names in the foot what it is about; the rest is told to whoever opens the file. */
  record Head(String of, String title, String subject, Instant madeAt, ZoneId zone) {
    String made() {
      return "made %s %s".formatted(Print.time(madeAt, zone), zone.getId());
    }
  }

  /** The bytes with the count of their pages. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Laid(byte[] bytes, int pages) {}

  private PdfPages(Head head, BiConsumer<Paper, PdfWriter> sections, int pages) {
    this.head = head;
    this.sections = sections;
    this.pages = pages;
  }

  /** Equal heads and sections give equal bytes; {@code sections} is called twice. */
  static Laid lay(Head head, BiConsumer<Paper, PdfWriter> sections) {
    PdfPages counting = new PdfPages(head, sections, 0);
    counting.write();
    PdfPages last = new PdfPages(head, sections, counting.written);
    last.write();
    return new Laid(StablePdf.settle(last.out.toByteArray()), last.written);
  }

  private void write() {
    Document document = new Document(PageSize.A4, MARGIN, MARGIN, MARGIN, FOOT);
    PdfWriter writer = PdfWriter.getInstance(document, out);
    Paper paper = new Paper(document, writer, new Type());
    writer.setPageEvent(new PageFoot(paper.type, head.of(), head.made(), pages));
    document.addTitle(head.title());
    document.addSubject(head.subject());
    document.addCreator("Chordlog");
    document.open();
    date(writer);
    sections.accept(paper, writer);
    if (paper.type.missed()) {
      paper.text(
          "□ stands for a character that the font of this report does not hold; the CSV export has"
              + " it.");
    }
    written = writer.getPageNumber();
    document.close();
  }

  private void date(PdfWriter writer) {
    PdfString date =
        new PdfDate(GregorianCalendar.from(ZonedDateTime.ofInstant(head.madeAt(), head.zone())));
    writer.getInfo().put(PdfName.CREATIONDATE, date);
    writer.getInfo().put(PdfName.MODDATE, date);
  }
}
