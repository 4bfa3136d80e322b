package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of each page: what it belongs to, when it was made, page n of m. */
final class PageFoot extends PdfPageEventHelper {
  private static final float SIZE = 7.5f;
  private static final float DOWN = 18;

  private final BaseFont font;
  private final String left;
  private final int pages;

  PageFoot(BaseFont font, String left, int pages) {
    this.font = font;
    this.left = left;
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
    pen.setColorFill(Paper.SOFT);
    pen.beginText();
    pen.setFontAndSize(font, SIZE);
    pen.showTextAligned(PdfContentByte.ALIGN_LEFT, left, document.left(), y, 0);
    String number = "page " + writer.getPageNumber() + " of " + pages;
    pen.showTextAligned(PdfContentByte.ALIGN_RIGHT, number, document.right(), y, 0);
    pen.endText();
  }
}
