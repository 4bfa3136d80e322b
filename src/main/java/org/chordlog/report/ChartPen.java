package org.chordlog.report;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.Font;
import java.util.HashMap;
import java.util.Map;
import org.chordlog.chart.ChartFonts;

/** Draws a picture with the report's type: each character in the first font that holds it. */
final class ChartPen extends PdfGraphics2D {
  private static final float JPEG_QUALITY = 1;
  private final Fonts fonts;

  ChartPen(PdfTemplate template, float width, float height, Type type) {
    this(template, width, height, new Fonts(type));
  }

  private ChartPen(PdfTemplate template, float width, float height, Fonts fonts) {
    super(template, width, height, fonts, false, false, JPEG_QUALITY);
    this.fonts = fonts;
  }

  private ChartPen(ChartPen parent) {
    super(parent);
    this.fonts = parent.fonts;
  }

  @Override
  protected PdfGraphics2D createChild() {
    return new ChartPen(this);
  }

  @Override
  public void drawString(String text, float x, float y) {
    Font asked = getFont();
    float at = x;
    for (Typeface.Part part : fonts.face(asked).parts(text)) {
      setFont(fonts.awt(part.font(), asked));
      super.drawString(part.text(), at, y);
      at += part.font().getWidthPoint(part.text(), asked.getSize2D());
    }
    setFont(asked);
  }

  /** Fonts of a face by the names that the pen keeps them under. */
  private static final class Fonts implements FontMapper {
    private final Type type;
    private final Map<BaseFont, Font> drawn = new HashMap<>();
    private final Map<String, BaseFont> named = new HashMap<>();

    Fonts(Type type) {
      this.type = type;
    }

    Typeface face(Font font) {
      return font.isBold() ? type.bold : type.regular;
    }

    /** The font itself, or one that holds what it lacks, as large. */
    Font awt(BaseFont font, Font asked) {
      Typeface face = face(asked);
      if (font == face.first()) {
        return asked;
      }
      Font drawnWith = drawn.computeIfAbsent(font, any -> read(face.resource(font), font));
      return drawnWith.deriveFont(asked.getSize2D());
    }

    private Font read(String resource, BaseFont font) {
      Font read = ChartFonts.font(resource);
      named.put(read.getFontName(), font);
      return read;
    }

    @Override
    public BaseFont awtToPdf(Font font) {
      return named.getOrDefault(font.getFontName(), face(font).first());
    }

    @Override
    public Font pdfToAwt(BaseFont font, int size) {
      throw new UnsupportedOperationException("not needed to draw");
    }
  }
}
