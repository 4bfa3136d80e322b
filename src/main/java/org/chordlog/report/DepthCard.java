package org.chordlog.report;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Color;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * A table for the wall beside the machine, one A4 page or more: the rows run down, then into the
 * next block of columns. Rows have as many cells as there are headings.
 */
public record DepthCard(
    String title,
    List<String> facts,
    List<String> headings,
    List<List<String>> rows,
    List<String> notes) {
  private static final int BLOCKS = 3;
  private static final float TEXT = 9;
  private static final int ROWS_A_PAGE = 46;

  public DepthCard {
    facts = List.copyOf(facts);
    headings = List.copyOf(headings);
    rows = rows.stream().map(List::copyOf).toList();
    notes = List.copyOf(notes);
  }

  /** Writes the PDF; the stream stays open. */
  public void write(OutputStream out) throws IOException {
    Type type = new Type();
    Document document = new Document(PageSize.A4, 36, 36, 30, 30);
    PdfWriter.getInstance(document, out).setCloseStream(false);
    document.addTitle(title);
    document.open();
    int perPage = BLOCKS * ROWS_A_PAGE;
    for (int from = 0; from == 0 || from < rows.size(); from += perPage) {
      page(document, type, rows.subList(from, Math.min(rows.size(), from + perPage)));
    }
    document.close();
  }

  private void page(Document document, Type type, List<List<String>> part) {
    document.newPage();
    document.add(new Paragraph(type.phrase(title, type.bold, 16, Color.BLACK)));
    facts.forEach(fact -> document.add(new Paragraph(text(type, fact))));
    document.add(table(type, part));
    notes.forEach(note -> document.add(new Paragraph(text(type, note))));
  }

  private PdfPTable table(Type type, List<List<String>> part) {
    PdfPTable table = new PdfPTable(BLOCKS * headings.size());
    table.setWidthPercentage(100);
    table.setSpacingBefore(8);
    table.setSpacingAfter(6);
    for (int block = 0; block < BLOCKS; block++) {
      headings.forEach(heading -> table.addCell(cell(bold(type, heading), Color.LIGHT_GRAY)));
    }
    int lines = (part.size() + BLOCKS - 1) / BLOCKS;
    for (int line = 0; line < lines; line++) {
      line(table, type, part, line, lines);
    }
    return table;
  }

  private void line(PdfPTable table, Type type, List<List<String>> part, int line, int lines) {
    Color shade = line % 2 == 1 ? new Color(0xEEEEEE) : Color.WHITE;
    for (int block = 0; block < BLOCKS; block++) {
      int index = block * lines + line;
      for (int i = 0; i < headings.size(); i++) {
        String text = index < part.size() ? part.get(index).get(i) : "";
        table.addCell(cell(i == 1 ? bold(type, text) : text(type, text), shade));
      }
    }
  }

  private static PdfPCell cell(Phrase text, Color shade) {
    PdfPCell cell = new PdfPCell(text);
    cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
    cell.setPadding(2);
    cell.setBackgroundColor(shade);
    return cell;
  }

  private static Phrase bold(Type type, String text) {
    return type.phrase(text, type.bold, TEXT, Color.BLACK);
  }

  private static Phrase text(Type type, String text) {
    return type.phrase(text, type.regular, TEXT, Color.BLACK);
  }
}
