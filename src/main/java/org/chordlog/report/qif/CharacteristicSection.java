package org.chordlog.report.qif;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import javax.xml.stream.XMLStreamException;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** The radius asked for with its limits, and one item for each position. */
final class CharacteristicSection {
  /** Limits and target are exact to the nanometre. */
  private static final int PLACES = 6;

  private final Job job;
  private final QifXml xml;
  private final QifIds ids;

  CharacteristicSection(Job job, QifXml xml, QifIds ids) {
    this.job = job;
    this.xml = xml;
    this.ids = ids;
  }

  void write(QifCount count) throws XMLStreamException {
    xml.open("Characteristics");
    xml.text("FormalStandardId", QifIds.GEOMETRY_STANDARD);
    definition();
    nominal();
    items(count.positions().names(), count.devices().all().size());
    xml.close();
  }

  private void definition() throws XMLStreamException {
    Specification wanted = job.specification();
    xml.open("CharacteristicDefinitions", "n", 1);
    xml.open("RadiusCharacteristicDefinition", "id", QifIds.DEFINITION);
    xml.text("Description", "Radius of the " + Words.of(wanted.face()));
    xml.text("Name", "R");
    if (wanted.lowerLimitMm() == null && wanted.upperLimitMm() == null) {
      xml.text("NonTolerance", "SET");
    } else {
      xml.open("Tolerance");
      limit("MaxValue", wanted.upperLimitMm());
      limit("MinValue", wanted.lowerLimitMm());
      xml.text("DefinedAsLimit", "true");
      xml.close();
    }
    xml.close();
    xml.close();
  }

  private void limit(String name, @Nullable Double limitMm) throws XMLStreamException {
    if (limitMm != null) {
      xml.decimal(name, limitMm, PLACES);
    }
  }

  private void nominal() throws XMLStreamException {
    xml.open("CharacteristicNominals", "n", 1);
    xml.open("RadiusCharacteristicNominal", "id", QifIds.NOMINAL);
    xml.text("CharacteristicDefinitionId", QifIds.DEFINITION);
    xml.text("Name", name());
    xml.decimal("TargetValue", job.specification().targetMm(), PLACES);
    xml.close();
    xml.close();
  }

  private String name() {
    String target = QifXml.plain(job.specification().targetMm(), 3);
    return "R " + target.replaceAll("\\.?0+$", "");
  }

  private void items(List<String> positions, int devices) throws XMLStreamException {
    xml.open("CharacteristicItems", "n", positions.size());
    for (int i = 0; i < positions.size(); i++) {
      xml.open("RadiusCharacteristicItem", "id", ids.item(i));
      xml.text("Description", "Position along the piece: " + positions.get(i));
      xml.text("Name", name() + " " + positions.get(i));
      if (devices > 0) {
        LongStream all = IntStream.range(0, devices).mapToLong(ids::device);
        xml.ids("MeasurementDeviceIds", all.boxed().toList());
      }
      xml.text("CharacteristicNominalId", QifIds.NOMINAL);
      xml.close();
    }
    xml.close();
  }
}
