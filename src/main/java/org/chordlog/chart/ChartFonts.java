package org.chordlog.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The bundled open fonts; their licences lie beside them. */
public final class ChartFonts {
  public static final String REGULAR_RESOURCE = "/fonts/RobotoCondensed-Regular.ttf";
  public static final String BOLD_RESOURCE = "/fonts/RobotoCondensed-Bold.ttf";

  /** For signs and scripts that the typeface lacks: as it is, and in bold. */
  public static final String WIDE_RESOURCE = "/fonts/DejaVuSansCondensed.ttf";

  public static final String WIDE_BOLD_RESOURCE = "/fonts/DejaVuSansCondensed-Bold.ttf";

  /** For Chinese, Japanese and Korean. */
  public static final String EAST_ASIAN_RESOURCE = "/fonts/DroidSansFallback.ttf";

  /** Fonts for SVG text, the bundled one first. */
  static final String FAMILY =
      "'Roboto Condensed','DejaVu Sans Condensed','DejaVu Sans',Verdana,sans-serif";

  private ChartFonts() {}

  static Font regular(float sizePx) {
    return Held.REGULAR.deriveFont(sizePx);
  }

  static Font bold(float sizePx) {
    return Held.BOLD.deriveFont(Font.BOLD, sizePx);
  }

  static double boldWidthPx(String text, float sizePx) {
    FontRenderContext context = new FontRenderContext(null, true, true);
    return bold(sizePx).getStringBounds(text, context).getWidth();
  }

  /** A bundled font at one pixel, for who draws what the typeface lacks. */
  public static Font font(String resource) {
    return load(resource);
  }

  /** Bytes of a bundled font, as a report embeds them. */
  public static byte[] bytes(String resource) {
    try (InputStream in = open(resource)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputStream open(String resource) throws IOException {
    InputStream in = ChartFonts.class.getResourceAsStream(resource);
    if (in == null) {
      throw new IOException("font " + resource + " is not in the jar");
    }
    return in;
  }

  private static Font load(String resource) {
    try (InputStream in = open(resource)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException | FontFormatException e) {
      throw new IllegalStateException(
          "font " + resource + " can't be loaded: " + e.getMessage(), e);
    }
  }

  /** Loaded at first use, so that a machine that can't draw still starts. */
  private static final class Held {
    static final Font REGULAR = load(REGULAR_RESOURCE);
    static final Font BOLD = load(BOLD_RESOURCE);
  }
}
