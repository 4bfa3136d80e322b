package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of each page: what it belongs to, when it was made, page n of m. */
final class PageFoot extends PdfPageEventHelper {
  private static final float SIZE = 7.5f;
  private static final float DOWN = 18;
  private static final float GAP = 12;

  private final Type type;
  private final String job;
  private final String made;
  private final int pages;

  PageFoot(Type type, String job, String made, int pages) {
    this.type = type;
    this.job = job;
    this.made = made;
    this.pages = pages;
  }

  @Override
  public void onEndPage(PdfWriter writer, Document document) {
    PdfContentByte pen = writer.getDirectContent();
    float y = document.bottom() - DOWN;
    pen.setColorStroke(Paper.RULE);
    pen.setLineWidth(0.5f);
    pen.moveTo(document.left(), y + 11);
    pen.lineTo(document.right(), y + 11);
    pen.stroke();
    String right = "%s · page %s of %s".formatted(made, writer.getPageNumber(), pages);
    float rightWidth = type.regular.widthPt(right, SIZE);
    float room = document.right() - document.left() - rightWidth - GAP;
    write(pen, Element.ALIGN_LEFT, type.fitted(job, SIZE, room), document.left(), y);
    write(pen, Element.ALIGN_RIGHT, right, document.right(), y);
  }

  private void write(PdfContentByte pen, int side, String text, float x, float y) {
    ColumnText.showTextAligned(
        pen,
        side,
        type.phrase(text, type.regular, SIZE, Paper.SOFT),
        x,
        y,
        0,
        Type.direction(text),
        0);
  }
}
