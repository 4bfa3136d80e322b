package org.chordlog.report.qif;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.Length;
import org.chordlog.measure.Mark;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.report.UtcTime;
import org.jspecify.annotations.Nullable;

/**
 * One reading. {@code combinedUncertainty} is the standard uncertainty of the radius and {@code
 * meanError} 0, as QIF wants both or neither; expanded uncertainty, coverage factor and interval
 * are attributes. A flat has no value.
 */
final class MeasurementElement {
  private static final int PLACES = 4;

  /** Degrees of freedom from here on mean infinitely many. */
  private static final double INFINITE = 1e6;

  private final QifXml xml;
  private final QifIds ids;
  private final QifCount count;

  MeasurementElement(QifXml xml, QifIds ids, QifCount count) {
    this.xml = xml;
    this.ids = ids;
    this.count = count;
  }

  void write(QifReading each, int ordinal, long component) throws XMLStreamException {
    Reading reading = each.reading();
    xml.open("RadiusCharacteristicMeasurement", "id", ids.measurement(ordinal));
    xml.attributes(attributes(each));
    xml.only("Status", "CharacteristicStatusEnum", status(each));
    xml.text("CharacteristicItemId", ids.item(count.positions().number(reading.position())));
    xml.text("TimeStamp", UtcTime.text(reading.wallMicros()));
    xml.text("ActualComponentId", component);
    xml.ids("MeasurementDeviceIds", List.of(ids.device(count.devices().number(reading))));
    value(reading.radius());
    xml.close();
  }

  /** A flat is decided as any curvature up to the detection limit: its value is not known. */
  private static String status(QifReading each) {
    boolean flat = each.reading().radius().flat();
    return flat ? "INDETERMINATE" : QifStatus.of(each.decision());
  }

  private void value(RadiusEstimate radius) throws XMLStreamException {
    Double radiusMm = radius.radiusMm();
    if (radiusMm != null) {
      xml.decimal(
          "Value",
          radiusMm,
          PLACES,
          "combinedUncertainty",
          QifXml.plain(standardUncertaintyMm(radius, radiusMm), PLACES),
          "meanError",
          "0");
    }
  }

  /** u(R) = R²·u(κ). */
  private static double standardUncertaintyMm(RadiusEstimate radius, double radiusMm) {
    return radiusMm * radiusMm * radius.standardUncertaintyPerMm();
  }

  private static Map<String, Object> attributes(QifReading each) {
    Reading reading = each.reading();
    RadiusEstimate radius = reading.radius();
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("station", reading.station());
    attributes.put("stationSequence", reading.stationSequence());
    attributes.put("readingId", reading.id());
    attributes.put("depthMm", Length.mm(reading.depthNm()));
    attributes.put("curvaturePerMm", radius.curvaturePerMm());
    attributes.put("standardUncertaintyPerMm", radius.standardUncertaintyPerMm());
    attributes.put("coverageFactor", radius.coverageFactor());
    interval(attributes, radius);
    if (radius.degreesOfFreedom() < INFINITE) {
      attributes.put("degreesOfFreedom", radius.degreesOfFreedom());
    }
    attributes.put("decision", each.decision().name());
    attributes.put("decisionAsTaken", reading.decision().name());
    remarks(attributes, each);
    return attributes;
  }

  /** A flat's least radius that could be told from it; an open interval has no upper end. */
  private static void interval(Map<String, Object> attributes, RadiusEstimate radius) {
    Double radiusMm = radius.radiusMm();
    Double upperMm = radius.upperMm();
    if (radiusMm == null) {
      attributes.put("flatAboveRadiusMm", radius.lowerMm());
      return;
    }
    double expanded = radius.coverageFactor() * standardUncertaintyMm(radius, radiusMm);
    CapabilitySection.put(attributes, "expandedUncertaintyMm", expanded);
    attributes.put("lowerMm", radius.lowerMm());
    if (upperMm != null) {
      attributes.put("upperMm", upperMm);
    }
  }

  private static void remarks(Map<String, Object> attributes, QifReading each) {
    Circumstances of = each.reading().circumstances();
    attributes.put("pass", of.pass());
    if (of.kind() != ReadingKind.PRODUCT) {
      attributes.put("kind", of.kind().name());
    }
    putText(attributes, "measuredBy", of.measuredBy());
    String marks =
        each.reading().marks().stream().sorted().map(Mark::name).collect(Collectors.joining(" "));
    putText(attributes, "marks", marks.isEmpty() ? null : marks);
    putText(attributes, "excludedFromStatistics", each.excluded() ? each.excludedReason() : null);
  }

  private static void putText(Map<String, Object> attributes, String name, @Nullable String text) {
    if (text != null) {
      attributes.put(name, text);
    }
  }
}
