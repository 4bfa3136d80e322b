package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Takes out what the generator adds and a chart does not need. */
final class SvgPruning {
  private static final List<String> UNUSED = List.of("xml:space", "xmlns:xlink", "text-anchor");

  private SvgPruning() {}

  /** Clips go too: nothing is ever drawn outside its panel. */
  static void prune(Element element) {
    UNUSED.forEach(element::removeAttribute);
    for (Node child : children(element)) {
      if (!(child instanceof Element inner)) {
        if (child.getNodeType() == Node.COMMENT_NODE) {
          element.removeChild(child);
        }
      } else if (inner.getTagName().equals("defs")) {
        element.removeChild(inner);
      } else {
        prune(inner);
      }
    }
  }

  private static List<Node> children(Element element) {
    List<Node> children = new ArrayList<>();
    for (int i = 0; i < element.getChildNodes().getLength(); i++) {
      children.add(element.getChildNodes().item(i));
    }
    return children;
  }
}
