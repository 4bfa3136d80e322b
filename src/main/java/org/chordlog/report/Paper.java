package org.chordlog.report;

import com.lowagie.text.Chunk;
import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.chordlog.chart.ChartFonts;

/** The report's type, colours, headings and tables. */
final class Paper {
  static final Color INK = new Color(0x1a2a30);
  static final Color SOFT = new Color(0x4a5c63);
  static final Color RULE = new Color(0xc9d3d5);
  static final Color SHADE = new Color(0xeef3f2);
  static final Color ALERT = new Color(0xb3261e);
  private static final float SMALL = 7.6f;
  private static final float TEXT = 8.8f;

  private final Document document;
  final BaseFont regular;
  final BaseFont bold;

  Paper(Document document) {
    this.document = document;
    this.regular = font(ChartFonts.REGULAR_RESOURCE);
    this.bold = font(ChartFonts.BOLD_RESOURCE);
  }

  private static BaseFont font(String resource) {
    try {
      return BaseFont.createFont(
          resource,
          BaseFont.IDENTITY_H,
          BaseFont.EMBEDDED,
          BaseFont.NOT_CACHED,
          ChartFonts.bytes(resource),
          null);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void add(Element element) {
    try {
      document.add(element);
    } catch (DocumentException e) {
      throw new IllegalStateException("report: " + e.getMessage(), e);
    }
  }

  float width() {
    return document.right() - document.left();
  }

  void newPage() {
    document.newPage();
  }

  /** A heading, kept with what follows by the room it asks for. */
  void heading(String text) {
    PdfPTable table = table(1);
    table.addCell(headingCell(text));
    table.setSpacingBefore(14);
    table.setSpacingAfter(5);
    add(table);
  }

  PdfPCell headingCell(String text) {
    PdfPCell cell = new PdfPCell(new Phrase(text, new Font(bold, 12, Font.NORMAL, INK)));
    cell.setBorder(Rectangle.BOTTOM);
    cell.setBorderColor(INK);
    cell.setBorderWidth(0.8f);
    cell.setPadding(0);
    cell.setPaddingBottom(4);
    return cell;
  }

  void text(String text) {
    Paragraph paragraph = new Paragraph(text, new Font(regular, TEXT, Font.NORMAL, INK));
    paragraph.setLeading(TEXT * 1.4f);
    paragraph.setSpacingAfter(4);
    add(paragraph);
  }

  void title(String text, String under) {
    Paragraph title = new Paragraph(text, new Font(bold, 19, Font.NORMAL, INK));
    title.setLeading(22);
    add(title);
    Paragraph line = new Paragraph(under, new Font(regular, 10, Font.NORMAL, SOFT));
    line.setSpacingAfter(8);
    add(line);
  }

  PdfPTable table(float... widths) {
    PdfPTable table = new PdfPTable(widths);
    table.setWidthPercentage(100);
    table.setSplitLate(true);
    return table;
  }

  PdfPTable table(List<String> heads, float... widths) {
    PdfPTable table = table(widths);
    table.setHeaderRows(1);
    for (String head : heads) {
      PdfPCell cell = cell(head, bold, SMALL, SOFT);
      cell.setBackgroundColor(SHADE);
      table.addCell(cell);
    }
    return table;
  }

  void row(PdfPTable table, String... texts) {
    for (String text : texts) {
      table.addCell(cell(text, regular, SMALL, INK));
    }
  }

  void right(PdfPTable table, String text) {
    PdfPCell cell = cell(text, regular, SMALL, INK);
    cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
    table.addCell(cell);
  }

  void strong(PdfPTable table, String text, Color colour) {
    table.addCell(cell(text, bold, SMALL, colour));
  }

  /** Names over values, several in a row. */
  void facts(List<Fact> facts, int columns) {
    float[] widths = new float[columns];
    java.util.Arrays.fill(widths, 1);
    PdfPTable table = table(widths);
    for (Fact fact : facts) {
      PdfPCell cell = new PdfPCell();
      cell.setBorder(Rectangle.NO_BORDER);
      cell.setPadding(2);
      cell.setPaddingBottom(5);
      cell.addElement(
          new Phrase(new Chunk(fact.name(), new Font(regular, SMALL, Font.NORMAL, SOFT))));
      cell.addElement(
          new Phrase(new Chunk(fact.value(), new Font(bold, TEXT + 0.6f, Font.NORMAL, INK))));
      table.addCell(cell);
    }
    table.getDefaultCell().setBorder(Rectangle.NO_BORDER);
    table.completeRow();
    add(table);
  }

  private static PdfPCell cell(String text, BaseFont face, float size, Color colour) {
    PdfPCell cell = new PdfPCell(new Phrase(text, new Font(face, size, Font.NORMAL, colour)));
    cell.setBorder(Rectangle.BOTTOM);
    cell.setBorderColor(RULE);
    cell.setBorderWidth(0.4f);
    cell.setPadding(2.5f);
    cell.setPaddingBottom(3.5f);
    return cell;
  }

  /** A name and its value. */
  record Fact(String name, String value) {}
}
