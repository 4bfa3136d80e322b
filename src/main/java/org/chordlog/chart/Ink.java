package org.chordlog.chart;

import java.awt.Color;
import java.util.Locale;

/** What a colour stands for, in light and in dark; no sign rests on its colour alone. */
enum Ink {
  TEXT(0x1a2a30, 0xeef3f2),
  SOFT(0x4a5c63, 0xb4c2c4),
  GRID(0xdbe2e3, 0x36444a),
  BAND(0x8fb0a6, 0x8fb0a7),
  POINT(0x14607a, 0x6cc4dd),
  LINE(0x7fa7b5, 0x3f7d90),
  CENTRE(0x1a2a31, 0xeef3f3),
  LIMIT(0x56646b, 0xa6b4b9),
  SPECIFICATION(0x7b2a6b, 0xe39ad6),
  SIGNAL(0xb3261e, 0xff8f80),
  EXCLUDED(0x646d72, 0x9ba8ac),
  EVENT(0x4d4a8f, 0xb3b0f2),
  BAR(0xa9cbd6, 0x2c6478),
  PAPER(0xffffff, 0x121a1d);

  private final Color light;
  private final Color dark;

  Ink(int light, int dark) {
    this.light = new Color(light);
    this.dark = new Color(dark);
  }

  /** The colour that everything is drawn with; other themes replace it in the SVG. */
  Color color() {
    return light;
  }

  /** A tint that lets show what is drawn beneath it. */
  Color tint() {
    return new Color(light.getRed(), light.getGreen(), light.getBlue(), 40);
  }

  /** The colour as an SVG value: fixed, or a custom property of the page. */
  String svg(Theme theme) {
    return switch (theme) {
      case LIGHT -> hex(light);
      case DARK -> hex(dark);
      case PAGE -> "var(--chart-%s,%s)".formatted(name().toLowerCase(Locale.ROOT), hex(light));
    };
  }

  String dark() {
    return hex(dark);
  }

  String light() {
    return hex(light);
  }

  private static String hex(Color color) {
    return "#%06x".formatted(color.getRGB() & 0xffffff);
  }
}
