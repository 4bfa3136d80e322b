package org.chordlog.chart;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads drawn pictures back. */
final class Svg {
  private static final Pattern NUMBERS = Pattern.compile("-?[0-9.]+");

  private Svg() {}

  static Document parse(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError(svg, e);
    }
  }

  /** Centres of the boxes around all paths and circles. */
  static List<Point2D> signs(Document svg) {
    List<Point2D> centres = new ArrayList<>();
    for (Element path : elements(svg, "path")) {
      centres.add(centre(path.getAttribute("d")));
    }
    for (Element circle : elements(svg, "circle")) {
      centres.add(
          new Point2D.Double(
              Double.parseDouble(circle.getAttribute("cx")),
              Double.parseDouble(circle.getAttribute("cy"))));
    }
    return centres;
  }

  static List<Element> elements(Document svg, String name) {
    NodeList nodes = svg.getElementsByTagNameNS("*", name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  /** Leaves the picture under target, to be looked at. */
  static void keep(String name, ChartPicture picture) {
    try {
      Path folder = Files.createDirectories(Path.of("target", "pictures"));
      Files.writeString(folder.resolve(name + ".svg"), picture.svg());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Point2D centre(String path) {
    double[] low = {1e9, 1e9};
    double[] high = {-1e9, -1e9};
    Matcher numbers = NUMBERS.matcher(path);
    for (int axis = 0; numbers.find(); axis = 1 - axis) {
      double value = Double.parseDouble(numbers.group());
      low[axis] = Math.min(low[axis], value);
      high[axis] = Math.max(high[axis], value);
    }
    return new Point2D.Double((low[0] + high[0]) / 2, (low[1] + high[1]) / 2);
  }
}
