package org.chordlog.chart;

import java.awt.Color;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.StyleHandler;
import org.w3c.dom.Element;

/** Keeps of the generator's style only what differs from SVG's defaults, in the theme's colours. */
final class SvgStyle implements StyleHandler {
  private static final Set<String> KEPT =
      Set.of(
          "fill",
          "stroke",
          "stroke-width",
          "stroke-dasharray",
          "font-size",
          "font-weight",
          "fill-opacity",
          "stroke-opacity");
  private static final Set<String> DEFAULTS =
      Set.of(
          "stroke-width=1",
          "stroke-dasharray=none",
          "font-weight=normal",
          "fill-opacity=1",
          "stroke-opacity=1");

  private final Map<String, String> colours;

  SvgStyle(Theme theme) {
    colours =
        Arrays.stream(Ink.values())
            .collect(Collectors.toMap(ink -> rgb(ink), ink -> ink.svg(theme)));
  }

  @Override
  @SuppressWarnings("rawtypes")
  public void setStyle(Element element, Map style, SVGGeneratorContext context) {
    boolean group = element.getTagName().equals("g"); // what is within one differs from it
    for (Object key : style.keySet()) {
      String name = String.valueOf(key);
      String value = String.valueOf(style.get(key));
      if (KEPT.contains(name) && !(group && DEFAULTS.contains(name + "=" + value))) {
        element.setAttribute(name, colours.getOrDefault(value.toLowerCase(Locale.ROOT), value));
      }
    }
  }

  /** As the generator writes it, which calls white by its name. */
  private static String rgb(Ink ink) {
    return ink.color().equals(Color.WHITE)
        ? "white"
        : "rgb(%s,%s,%s)"
            .formatted(ink.color().getRed(), ink.color().getGreen(), ink.color().getBlue());
  }
}
