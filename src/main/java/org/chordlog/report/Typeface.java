package org.chordlog.report;

import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.chart.ChartFonts;

/**
 * A face of the report's type: the bundled typeface first, then fonts for the characters that it
 * lacks, each read when it is first needed. One thread.
 */
final class Typeface {
  private final List<String> resources;
  private final List<BaseFont> read = new ArrayList<>();

  /** Characters that follow each other in one font. */
  record Part(String text, BaseFont font) {}

  /** The resources of the fonts in the order in which they are asked for a character. */
  Typeface(String... resources) {
    this.resources = List.of(resources);
  }

  /** The typeface itself. */
  BaseFont first() {
    return font(0);
  }

  /** Where a font of {@link #parts} comes from. */
  String resource(BaseFont font) {
    return resources.get(read.indexOf(font));
  }

  boolean holds(int character) {
    return Character.isWhitespace(character) || index(character) < resources.size();
  }

  List<Part> parts(String text) {
    List<Part> parts = new ArrayList<>();
    StringBuilder part = new StringBuilder();
    BaseFont last = first();
    for (int character : text.codePoints().toArray()) {
      BaseFont font = Character.isWhitespace(character) ? last : fontOf(character);
      if (font != last && !part.isEmpty()) {
        parts.add(new Part(part.toString(), last));
        part.setLength(0);
      }
      last = font;
      part.appendCodePoint(character);
    }
    if (!part.isEmpty()) {
      parts.add(new Part(part.toString(), last));
    }
    return parts;
  }

  float widthPt(String text, float size) {
    float width = 0;
    for (Part part : parts(text)) {
      width += part.font().getWidthPoint(part.text(), size);
    }
    return width;
  }

  private BaseFont fontOf(int character) {
    int index = index(character);
    return font(index < resources.size() ? index : 0);
  }

  private int index(int character) {
    int index = 0;
    while (index < resources.size() && !font(index).charExists(character)) {
      index++;
    }
    return index;
  }

  private BaseFont font(int index) {
    while (read.size() <= index) {
      read.add(open(resources.get(read.size())));
    }
    return read.get(index);
  }

  private static BaseFont open(String resource) {
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
}
