package org.chordlog.chart;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

/** How an SVG is coloured. */
public enum Theme {
  /** By custom properties of the page it is put into, as {@link #css} sets them; else light. */
  PAGE,
  LIGHT,
  DARK;

  /** Custom properties for a page: light, and dark by the viewer's wish or by data-theme. */
  public static String css() {
    String dark = properties(Ink::dark);
    return ":root{"
        + properties(Ink::light)
        + "}\n@media(prefers-color-scheme:dark){:root:not([data-theme=light]){"
        + dark
        + "}}\n:root[data-theme=dark]{"
        + dark
        + "}\n";
  }

  private static String properties(Function<Ink, String> value) {
    return Arrays.stream(Ink.values())
        .map(ink -> "--chart-" + ink.name().toLowerCase(Locale.ROOT) + ":" + value.apply(ink))
        .collect(Collectors.joining(";"));
  }
}
