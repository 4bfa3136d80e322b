package org.chordlog.report.qif;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import javax.xml.stream.XMLStreamException;

/**
 * Writes QIF 3.0 results (ISO 23952:2020) in one pass, however many readings there are: what it
 * holds in memory is a little over a byte a reading. Equal input gives equal bytes.
 */
public final class QifWriter {
  static final String NAME_SPACE = "http://qifstandards.org/xsd/qif3";

  private final QifJob from;
  private final QifXml xml;
  private final QifCount count;
  private final QifIds ids;

  private QifWriter(QifJob from, OutputStream out) throws XMLStreamException {
    this.from = from;
    count = new QifCount(from);
    ids = new QifIds(from, count);
    xml = new QifXml(out);
  }

  /** Flushes {@code out} and leaves it open. */
  public static void write(QifJob from, OutputStream out) throws IOException {
    try {
      new QifWriter(from, out).write();
      out.flush();
    } catch (XMLStreamException e) {
      throw e.getNestedException() instanceof IOException of
          ? of
          : new IOException("the document can't be written", e);
    }
  }

  private void write() throws XMLStreamException {
    xml.start();
    xml.root("QIFDocument", NAME_SPACE, "versionQIF", "3.0.0", "idMax", Long.toString(ids.most()));
    new HeadSection(from, xml, ids).write();
    new GaugeSection(xml, ids).write(count.devices());
    new CharacteristicSection(from.job(), xml, ids).write(count);
    new ResultsSection(from, xml, ids, count).write();
    statistics();
    xml.end();
  }

  private void statistics() throws XMLStreamException {
    CapabilitySection capability = new CapabilitySection(from, xml, ids, count);
    List<QifStudy> studies = from.studies().stream().filter(StudySection::has).toList();
    int results = studies.size() + (capability.any() ? 1 : 0);
    if (results == 0) {
      return;
    }
    xml.open("Statistics");
    if (capability.any()) {
      capability.plan();
    }
    xml.open("StatisticalStudiesResults", "n", results);
    if (capability.any()) {
      capability.results();
    }
    StudySection section = new StudySection(xml, ids);
    for (int i = 0; i < studies.size(); i++) {
      section.write(studies.get(i), i);
    }
    xml.close();
    xml.close();
  }
}
