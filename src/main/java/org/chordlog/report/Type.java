package org.chordlog.report;

import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.Bidi;
import org.chordlog.chart.ChartFonts;

/** The report's fonts, and what they can't show. */
final class Type {
  /** Stands for a character that the font does not hold. */
  static final int MISSING = '□';

  final BaseFont regular = font(ChartFonts.REGULAR_RESOURCE);
  final BaseFont bold = font(ChartFonts.BOLD_RESOURCE);
  private boolean missed;

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

  Phrase phrase(String text, BaseFont face, float size, Color colour) {
    return new Phrase(shown(text, face), new Font(face, size, Font.NORMAL, colour));
  }

  /** Whether a character had to be left out so far. */
  boolean missed() {
    return missed;
  }

  /** As long a part as the width has room for, with an ellipsis where it is cut. */
  String fitted(String text, float size, float width) {
    String shown = shown(text, regular);
    int end = shown.length();
    while (end > 0 && regular.getWidthPoint(cut(shown, end), size) > width) {
      end = shown.offsetByCodePoints(end, -1);
    }
    return cut(shown, end);
  }

  private static String cut(String text, int end) {
    return end == text.length() ? text : text.substring(0, end).stripTrailing() + "…";
  }

  private String shown(String text, BaseFont face) {
    StringBuilder shown = new StringBuilder();
    text.codePoints().forEach(each -> shown.appendCodePoint(shown(each, face)));
    return shown.toString();
  }

  private int shown(int character, BaseFont face) {
    boolean known = Character.isWhitespace(character) || face.charExists(character);
    missed |= !known;
    return known ? character : MISSING;
  }

  /** Right-to-left scripts are put in order and joined; others need no such work. */
  static int direction(String text) {
    return Bidi.requiresBidi(text.toCharArray(), 0, text.length())
        ? PdfWriter.RUN_DIRECTION_LTR
        : PdfWriter.RUN_DIRECTION_NO_BIDI;
  }
}
