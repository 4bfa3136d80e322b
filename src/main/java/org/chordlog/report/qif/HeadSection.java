package org.chordlog.report.qif;

import java.util.LinkedHashMap;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import org.chordlog.measure.Job;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyKind;

/** Identity, header, standards, software and units. */
final class HeadSection {
  private final QifJob from;
  private final QifXml xml;
  private final QifIds ids;

  HeadSection(QifJob from, QifXml xml, QifIds ids) {
    this.from = from;
    this.xml = xml;
    this.ids = ids;
  }

  void write() throws XMLStreamException {
    xml.text("QPId", ids.document().toString());
    processCapability();
    header();
    standards();
    software();
    units();
  }

  /** QIF has no study of that kind: its figures are attributes of the document. */
  private void processCapability() throws XMLStreamException {
    Map<String, Object> attributes = new LinkedHashMap<>();
    for (QifStudy study : from.studies()) {
      if (study.result().kind() == StudyKind.PROCESS) {
        for (StudyFigure figure : study.result().figures()) {
          StudySection.put(attributes, study.name() + ": ", figure);
        }
      }
    }
    xml.attributes(attributes);
  }

  private void header() throws XMLStreamException {
    Job job = from.job();
    xml.open("Header");
    xml.only("Application", "Name", "Chordlog " + from.softwareVersion());
    String part = job.part().isBlank() ? "" : ", part " + job.part();
    String customer = job.details().customer();
    String revision = job.details().drawingRevision();
    String drawing = revision == null ? "" : ", drawing revision " + revision;
    xml.text(
        "Description",
        "Job "
            + job.name()
            + part
            + drawing
            + (customer == null ? "" : ", for " + customer)
            + (job.revision() > 0 ? ", limits of revision " + job.revision() : "")
            + ", machine "
            + job.machine()
            + ". Radii are derived from depths over a chord; the attributes of each measurement and"
            + " device give depth, span and foot radius, so that each can be computed again.");
    xml.close();
  }

  private void standards() throws XMLStreamException {
    xml.open("StandardsDefinitions", "n", 2);
    standard(QifIds.GEOMETRY_STANDARD, "ISO 1101", "2017");
    standard(QifIds.DECISION_STANDARD, "ISO 14253-1", "2017");
    xml.close();
  }

  private void standard(long id, String designator, String year) throws XMLStreamException {
    xml.open("Standard", "id", id);
    xml.only("Organization", "StandardsOrganizationEnum", "ISO");
    xml.text("Designator", designator);
    xml.text("Year", year);
    xml.close();
  }

  private void software() throws XMLStreamException {
    xml.open("SoftwareDefinitions", "n", 1);
    xml.open("Software", "id", QifIds.SOFTWARE);
    xml.text("VendorName", "Chordlog");
    xml.text("ApplicationName", "Chordlog");
    xml.text("Version", from.softwareVersion());
    xml.close();
    xml.close();
    xml.open("AlgorithmDefinitions", "n", 1);
    xml.open("Algorithm", "id", QifIds.ALGORITHM);
    xml.text("SoftwareId", QifIds.SOFTWARE);
    xml.text(
        "Parameters",
        "within: mean range over d2, or mean standard deviation over c4; overall: s with n - 1");
    xml.text("Name", "indices of a job");
    xml.close();
    xml.close();
  }

  private void units() throws XMLStreamException {
    xml.open("FileUnits");
    xml.open("PrimaryUnits");
    xml.open("LinearUnit");
    xml.text("SIUnitName", "meter");
    xml.text("UnitName", "mm");
    xml.only("UnitConversion", "Factor", "0.001");
    xml.close();
    xml.close();
    xml.close();
  }
}
