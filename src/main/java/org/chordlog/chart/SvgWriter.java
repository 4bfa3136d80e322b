package org.chordlog.chart;

import java.awt.Dimension;
import java.io.StringWriter;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** A drawing as a compact SVG: no style sheet (a page's content policy may forbid one). */
final class SvgWriter {
  private static final String SVG = "http://www.w3.org/2000/svg";

  private SvgWriter() {}

  static ChartPicture write(Drawing drawing, PictureSize size, Theme theme) {
    SVGGraphics2D pen = new SVGGraphics2D(context(theme), false);
    pen.setSVGCanvasSize(new Dimension(size.widthPx(), size.heightPx()));
    List<PointPlace> places = drawing.draw(pen, size.widthPx(), size.heightPx());
    Element root = pen.getRoot();
    SvgPruning.prune(root);
    dress(root, drawing.description(), size);
    return new ChartPicture(text(root), size, places);
  }

  private static SVGGeneratorContext context(Theme theme) {
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
    context.setPrecision(1);
    context.setComment("");
    context.setStyleHandler(new SvgStyle(theme));
    return context;
  }

  private static Document document() {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(SVG, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void dress(Element root, String description, PictureSize size) {
    root.setAttribute("viewBox", "0 0 %s %s".formatted(size.widthPx(), size.heightPx()));
    root.setAttribute("class", "chart");
    root.setAttribute("role", "img");
    root.setAttribute("aria-label", description);
    root.setAttribute("font-family", ChartFonts.FAMILY);
    Element title = root.getOwnerDocument().createElementNS(SVG, "title");
    title.setTextContent(description);
    root.insertBefore(title, root.getFirstChild());
  }

  private static String text(Element root) {
    StringWriter out = new StringWriter();
    try {
      Transformer transformer = TransformerFactory.newInstance().newTransformer();
      transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      transformer.transform(new DOMSource(root), new StreamResult(out));
    } catch (TransformerException e) {
      throw new IllegalStateException(e);
    }
    return out.toString();
  }
}
