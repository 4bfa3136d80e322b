package org.chordlog.report.qif;

import java.util.Iterator;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.chordlog.measure.Job;
import org.chordlog.report.UtcTime;

/** The readings piece by piece, then the pieces; nothing without readings. */
final class ResultsSection {
  private final QifJob from;
  private final QifXml xml;
  private final QifIds ids;
  private final QifCount count;
  private final MeasurementElement measurement;

  ResultsSection(QifJob from, QifXml xml, QifIds ids, QifCount count) {
    this.from = from;
    this.xml = xml;
    this.ids = ids;
    this.count = count;
    measurement = new MeasurementElement(xml, ids, count);
  }

  void write() throws XMLStreamException {
    if (count.readings() == 0) {
      return;
    }
    xml.open("Results");
    xml.open("MeasurementResultsSet", "n", count.pieces().groups());
    Iterator<QifReading> all = from.readings().all();
    int ordinal = 0;
    for (int group = 0; group < count.pieces().groups(); group++) {
      group(group, ordinal, all);
      ordinal += count.pieces().length(group);
    }
    if (all.hasNext()) {
      throw changed();
    }
    xml.close();
    pieces();
    traceability();
    xml.close();
  }

  private static IllegalStateException changed() {
    return new IllegalStateException("the readings changed while they were written");
  }

  private void group(int group, int firstOrdinal, Iterator<QifReading> all)
      throws XMLStreamException {
    int length = count.pieces().length(group);
    xml.open("MeasurementResults", "id", ids.group(group));
    xml.text("ThisResultsInstanceQPId", ids.results(group).toString());
    xml.open("MeasuredCharacteristics");
    xml.open("CharacteristicMeasurements", "n", length);
    long component = ids.component(count.pieces().index(group));
    for (int i = 0; i < length; i++) {
      if (!all.hasNext()) {
        throw changed();
      }
      measurement.write(all.next(), firstOrdinal + i, component);
    }
    xml.close();
    xml.close();
    status("InspectionStatus", count.pieces().status(group));
    xml.ids("ActualComponentIds", List.of(component));
    xml.close();
  }

  private void status(String name, QifStatus status) throws XMLStreamException {
    xml.only(name, "InspectionStatusEnum", status.name());
  }

  private void pieces() throws XMLStreamException {
    QifPieces pieces = count.pieces();
    QifPieces.Whole whole = pieces.whole();
    xml.open("ActualComponentSets", "n", 1);
    xml.open("ActualComponentSet", "n", pieces.count());
    for (int i = 0; i < pieces.count(); i++) {
      xml.open("ActualComponent", "id", ids.component(i));
      xml.text("SerialNumber", from.job().id() + "-" + pieces.number(i));
      status("Status", whole.status(i));
      String lot = whole.lot(i);
      if (!lot.isBlank()) {
        xml.only("Traceability", "LotNumber", lot);
      }
      xml.close();
    }
    xml.close();
    xml.close();
  }

  private void traceability() throws XMLStreamException {
    Job job = from.job();
    xml.open("InspectionTraceability");
    xml.text("OrderNumber", job.name());
    xml.text("ReportNumber", job.id());
    xml.text("InspectionStart", UtcTime.text(count.firstMicros()));
    xml.text("InspectionEnd", UtcTime.text(count.lastMicros()));
    xml.close();
  }
}
