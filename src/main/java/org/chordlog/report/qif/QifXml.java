package org.chordlog.report.qif;

import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.LongConsumer;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** XML one element a line, without indentation; what XML can't hold is replaced. */
final class QifXml {
  private final XMLStreamWriter out;

  QifXml(OutputStream stream) throws XMLStreamException {
    out =
        XMLOutputFactory.newInstance().createXMLStreamWriter(stream, StandardCharsets.UTF_8.name());
  }

  /** Attributes by turns name and value. */
  void open(String name, String... attributes) throws XMLStreamException {
    out.writeStartElement(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], clean(attributes[i + 1]));
    }
    out.writeCharacters("\n");
  }

  void open(String name, String attribute, long value) throws XMLStreamException {
    open(name, attribute, Long.toString(value));
  }

  void close() throws XMLStreamException {
    out.writeEndElement();
    out.writeCharacters("\n");
  }

  void text(String name, String text) throws XMLStreamException {
    out.writeStartElement(name);
    out.writeCharacters(clean(text));
    close();
  }

  void text(String name, long number) throws XMLStreamException {
    text(name, Long.toString(number));
  }

  /** A decimal with that many places, which QIF is told. */
  void decimal(String name, double value, int places, String... attributes)
      throws XMLStreamException {
    out.writeStartElement(name);
    out.writeAttribute("decimalPlaces", Integer.toString(places));
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], attributes[i + 1]);
    }
    out.writeCharacters(plain(value, places));
    close();
  }

  /** A list of one element within another. */
  void only(String outer, String inner, String text) throws XMLStreamException {
    open(outer);
    text(inner, text);
    close();
  }

  /** User attributes: whole numbers, numbers or texts; nothing for none. */
  void attributes(Map<String, Object> values) throws XMLStreamException {
    if (values.isEmpty()) {
      return;
    }
    open("Attributes", "n", values.size());
    for (Map.Entry<String, Object> entry : values.entrySet()) {
      out.writeEmptyElement(type(entry.getValue()));
      out.writeAttribute("name", clean(entry.getKey()));
      out.writeAttribute("value", clean(entry.getValue().toString()));
      out.writeCharacters("\n");
    }
    close();
  }

  private static String type(Object value) {
    if (value instanceof Long || value instanceof Integer) {
      return "AttributeI1";
    }
    return value instanceof Double ? "AttributeD1" : "AttributeStr";
  }

  void ids(String name, List<Long> ids) throws XMLStreamException {
    open(name, "n", ids.size());
    for (long id : ids) {
      text("Id", id);
    }
    close();
  }

  /** Ids that are not gathered in a list first: {@code each} hands them over. */
  void ids(String name, long count, IdSource each) throws XMLStreamException {
    open(name, "n", count);
    try {
      each.to(
          id -> {
            try {
              text("Id", id);
            } catch (XMLStreamException e) {
              throw new Wrapped(e);
            }
          });
    } catch (Wrapped e) {
      throw e.cause;
    }
    close();
  }

  /** Hands ids to their taker one by one. */
  interface IdSource {
    void to(LongConsumer taker);
  }

  private static final class Wrapped extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final XMLStreamException cause;

    Wrapped(XMLStreamException cause) {
      super(cause);
      this.cause = cause;
    }
  }

  void start() throws XMLStreamException {
    out.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
    out.writeCharacters("\n");
  }

  void root(String name, String namespace, String... attributes) throws XMLStreamException {
    out.setDefaultNamespace(namespace);
    out.writeStartElement(namespace, name);
    out.writeDefaultNamespace(namespace);
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], attributes[i + 1]);
    }
    out.writeCharacters("\n");
  }

  void end() throws XMLStreamException {
    close();
    out.writeEndDocument();
    out.flush();
  }

  /** Never with an exponent. */
  static String plain(double value, int places) {
    return new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
  }

  /** XML 1.0 holds no control characters but tab and line ends, and no lone surrogates. */
  static String clean(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints().forEach(point -> clean.appendCodePoint(allowed(point) ? point : '\uFFFD'));
    return clean.toString();
  }

  private static boolean allowed(int point) {
    return point == '\t'
        || point == '\n'
        || point == '\r'
        || (point >= 0x20 && point < 0xD800)
        || (point >= 0xE000 && point != 0xFFFE && point != 0xFFFF);
  }
}
