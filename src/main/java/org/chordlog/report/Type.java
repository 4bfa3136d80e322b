package org.chordlog.report;

import com.lowagie.text.Chunk;
import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Color;
import java.text.Bidi;
import org.chordlog.chart.ChartFonts;

/** The report's fonts, and what they can't show. */
final class Type {
  /** Stands for a character that no font holds. */
  static final int MISSING = '□';

  private static final float LEADING = 1.3f;

  final Typeface regular =
      new Typeface(
          ChartFonts.REGULAR_RESOURCE, ChartFonts.WIDE_RESOURCE, ChartFonts.EAST_ASIAN_RESOURCE);
  final Typeface bold =
      new Typeface(
          ChartFonts.BOLD_RESOURCE, ChartFonts.WIDE_BOLD_RESOURCE, ChartFonts.EAST_ASIAN_RESOURCE);
  private boolean missed;

  /** Text in pieces, each in the first font that holds its characters. */
  Phrase phrase(String text, Typeface face, float size, Color colour) {
    Phrase phrase = new Phrase(LEADING * size);
    for (Typeface.Part part : face.parts(shown(text, face))) {
      phrase.add(new Chunk(part.text(), new Font(part.font(), size, Font.NORMAL, colour)));
    }
    return phrase;
  }

  /** Whether a character had to be left out so far. */
  boolean missed() {
    return missed;
  }

  /** As long a part as the width has room for, with an ellipsis where it is cut. */
  String fitted(String text, float size, float width) {
    String shown = shown(text, regular);
    int end = shown.length();
    while (end > 0 && regular.widthPt(cut(shown, end), size) > width) {
      end = shown.offsetByCodePoints(end, -1);
    }
    return cut(shown, end);
  }

  private static String cut(String text, int end) {
    return end == text.length() ? text : text.substring(0, end).stripTrailing() + "…";
  }

  private String shown(String text, Typeface face) {
    StringBuilder shown = new StringBuilder();
    text.codePoints().forEach(each -> shown.appendCodePoint(shown(each, face)));
    return shown.toString();
  }

  private int shown(int character, Typeface face) {
    boolean known = face.holds(character);
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
