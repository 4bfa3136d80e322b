package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Element;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Color;
import java.util.Arrays;
import java.util.List;

/** The report's type, colours, headings and tables. */
final class Paper {
  static final Color INK = new Color(0x1a2a30);
  static final Color SOFT = new Color(0x4a5c63);
  static final Color RULE = new Color(0xc9d3d5);
  static final Color SHADE = new Color(0xeef3f2);
  static final Color ALERT = new Color(0xb3261e);
  private static final float SMALL = 7.6f;
  private static final float TEXT = 8.8f;

  /** A heading with less room than this beneath it goes to the next page. */
  private static final float ROOM = 110;

  private final Document document;
  private final PdfWriter writer;
  final Type type;

  Paper(Document document, PdfWriter writer, Type type) {
    this.document = document;
    this.writer = writer;
    this.type = type;
  }

  void add(Element element) {
    try {
      document.add(element);
    } catch (DocumentException e) {
      throw new IllegalStateException("report: " + e.getMessage(), e);
    }
  }

  void newPage() {
    document.newPage();
  }

  float width() {
    return document.right() - document.left();
  }

  /** A heading, on the next page where there is no room for what follows. */
  void heading(String text) {
    heading(text, ROOM);
  }

  /** The same where so much follows that must not be torn from it, points. */
  void heading(String text, float room) {
    if (writer.getVerticalPosition(true) - document.bottom() < room) {
      document.newPage();
    }
    PdfPTable table = table(1);
    table.addCell(headingCell(text));
    table.setSpacingBefore(14);
    table.setSpacingAfter(5);
    add(table);
  }

  PdfPCell headingCell(String text) {
    PdfPCell cell = new PdfPCell(type.phrase(text, type.bold, 12, INK));
    cell.setBorder(Rectangle.BOTTOM);
    cell.setBorderColor(INK);
    cell.setBorderWidth(0.8f);
    cell.setPadding(0);
    cell.setPaddingBottom(4);
    return cell;
  }

  void text(String text) {
    lines(text, type.regular, TEXT, INK, 4);
  }

  /** For whoever looks for it. */
  void small(String text) {
    lines(text, type.regular, SMALL, SOFT, 1);
  }

  /** The one sentence to read. */
  void large(String text) {
    lines(text, type.bold, 13, INK, 8);
  }

  /** Lines to sign on, side by side. */
  void signatures(String... what) {
    float[] widths = new float[what.length];
    Arrays.fill(widths, 1);
    PdfPTable table = table(widths);
    for (String each : what) {
      table.addCell(signature(each));
    }
    table.setSpacingBefore(30);
    add(table);
  }

  /** A line to sign on, with what for beneath it. */
  private PdfPCell signature(String what) {
    PdfPCell cell = new PdfPCell(type.phrase(what, type.regular, SMALL, SOFT));
    cell.setBorder(Rectangle.TOP);
    cell.setBorderColor(INK);
    cell.setBorderWidth(0.8f);
    cell.setPaddingTop(3);
    return cell;
  }

  void title(String text, String under) {
    lines(text, type.bold, 19, INK, 0);
    lines(under, type.regular, 10, SOFT, 8);
  }

  private void lines(String text, Typeface face, float size, Color colour, float after) {
    PdfPTable table = table(1);
    PdfPCell cell = new PdfPCell(type.phrase(text, face, size, colour));
    cell.setRunDirection(Type.direction(text));
    cell.setBorder(Rectangle.NO_BORDER);
    cell.setPadding(0);
    cell.setLeading(0, 1.3f);
    cell.setPaddingBottom(after + size * 0.2f);
    table.addCell(cell);
    add(table);
  }

  PdfPTable table(float... widths) {
    PdfPTable table = new PdfPTable(widths);
    table.setWidthPercentage(100);
    table.setSplitLate(true);
    return table;
  }

  /** With its heads repeated on each page. */
  PdfPTable table(Column... columns) {
    float[] widths = new float[columns.length];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = columns[i].width();
    }
    PdfPTable table = table(widths);
    table.setHeaderRows(1);
    for (Column column : columns) {
      PdfPCell cell = cell(column.head(), type.bold, SMALL, SOFT);
      cell.setHorizontalAlignment(column.number() ? Element.ALIGN_RIGHT : Element.ALIGN_LEFT);
      cell.setVerticalAlignment(Element.ALIGN_BOTTOM);
      cell.setBackgroundColor(SHADE);
      table.addCell(cell);
    }
    return table;
  }

  void row(PdfPTable table, String... texts) {
    for (String text : texts) {
      table.addCell(cell(text, type.regular, SMALL, INK));
    }
  }

  void right(PdfPTable table, String text) {
    PdfPCell cell = cell(text, type.regular, SMALL, INK);
    cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
    table.addCell(cell);
  }

  void strong(PdfPTable table, String text, Color colour) {
    table.addCell(cell(text, type.bold, SMALL, colour));
  }

  /** Names over values, several in a row. */
  void facts(List<Fact> facts, int columns) {
    float[] widths = new float[columns];
    java.util.Arrays.fill(widths, 1);
    PdfPTable table = table(widths);
    for (Fact fact : facts) {
      table.addCell(fact(fact));
    }
    table.getDefaultCell().setBorder(Rectangle.NO_BORDER);
    table.completeRow();
    add(table);
  }

  private PdfPCell fact(Fact fact) {
    PdfPTable pair = table(1);
    pair.addCell(plain(fact.name(), type.regular, SMALL, SOFT));
    pair.addCell(plain(fact.value(), type.bold, TEXT, INK));
    PdfPCell cell = new PdfPCell(pair);
    cell.setBorder(Rectangle.NO_BORDER);
    cell.setPaddingRight(6);
    cell.setPaddingBottom(5);
    return cell;
  }

  private PdfPCell plain(String text, Typeface face, float size, Color colour) {
    PdfPCell cell = new PdfPCell(type.phrase(text, face, size, colour));
    cell.setRunDirection(Type.direction(text));
    cell.setBorder(Rectangle.NO_BORDER);
    cell.setPadding(2);
    return cell;
  }

  private PdfPCell cell(String text, Typeface face, float size, Color colour) {
    PdfPCell cell = plain(text, face, size, colour);
    cell.setBorder(Rectangle.BOTTOM);
    cell.setBorderColor(RULE);
    cell.setBorderWidth(0.4f);
    cell.setPadding(2.5f);
    cell.setPaddingLeft(5);
    cell.setPaddingBottom(3.5f);
    return cell;
  }

  /** A name and its value. */
  record Fact(String name, String value) {}
}
