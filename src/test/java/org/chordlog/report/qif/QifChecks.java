package org.chordlog.report.qif;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * What neither the schema nor the standard's own checks find, or only one of them: lengths of
 * lists, the largest id, references that point nowhere, limits out of order, an uncertainty without
 * its mean error.
 */
public final class QifChecks {
  private final List<String> faults = new ArrayList<>();
  private final Set<String> ids = new HashSet<>();
  private long largest;

  private QifChecks() {}

  public static List<String> faults(byte[] document) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    Document read = factory.newDocumentBuilder().parse(new ByteArrayInputStream(document));
    QifChecks checks = new QifChecks();
    checks.gather(read.getDocumentElement());
    checks.largestId(read.getDocumentElement());
    checks.each(read.getDocumentElement());
    return checks.faults;
  }

  private static List<Element> children(Element element) {
    List<Element> children = new ArrayList<>();
    for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element) {
        children.add((Element) node);
      }
    }
    return children;
  }

  private void gather(Element element) {
    if (element.hasAttribute("id")) {
      if (!ids.add(element.getAttribute("id"))) {
        faults.add("id " + element.getAttribute("id") + " is there twice");
      }
      largest = Math.max(largest, Long.parseLong(element.getAttribute("id")));
    }
    children(element).forEach(this::gather);
  }

  private void largestId(Element root) {
    if (Long.parseLong(root.getAttribute("idMax")) != largest) {
      faults.add("idMax " + root.getAttribute("idMax") + " but the largest id is " + largest);
    }
  }

  private void each(Element element) {
    List<Element> children = children(element);
    if (element.hasAttribute("n")
        && Integer.parseInt(element.getAttribute("n")) != children.size()) {
      faults.add(
          element.getLocalName()
              + " n "
              + element.getAttribute("n")
              + " but "
              + children.size()
              + " children");
    }
    reference(element, children);
    limits(element, children);
    uncertainty(element);
    children.forEach(this::each);
  }

  private void reference(Element element, List<Element> children) {
    String name = element.getLocalName();
    boolean refers = name.equals("Id") || (name.endsWith("Id") && !name.endsWith("QPId"));
    if (refers && children.isEmpty() && !ids.contains(element.getTextContent())) {
      faults.add(name + " " + element.getTextContent() + " points nowhere");
    }
  }

  private void limits(Element element, List<Element> children) {
    BigDecimal least = number(children, "MinValue", "Minimum", "LowerControlLimit");
    BigDecimal most = number(children, "MaxValue", "Maximum", "UpperControlLimit");
    if (least != null && most != null && least.compareTo(most) > 0) {
      faults.add(element.getLocalName() + ": " + least + " above " + most);
    }
  }

  private static @Nullable BigDecimal number(List<Element> children, String... names) {
    for (Element child : children) {
      if (List.of(names).contains(child.getLocalName())) {
        return new BigDecimal(child.getTextContent().trim());
      }
    }
    return null;
  }

  private void uncertainty(Element element) {
    if (element.hasAttribute("combinedUncertainty") != element.hasAttribute("meanError")) {
      faults.add(element.getLocalName() + ": combinedUncertainty and meanError go together");
    }
  }
}
