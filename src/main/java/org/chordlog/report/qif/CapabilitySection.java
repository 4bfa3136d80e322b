package org.chordlog.report.qif;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.stream.XMLStreamException;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.verdict.CapabilityVerdict;
import org.jspecify.annotations.Nullable;

/** Capability of the job, position by position. */
final class CapabilitySection {
  private static final int PLACES = 4;
  private static final MathContext TOLD = new MathContext(12);
  private final QifJob from;
  private final QifXml xml;
  private final QifIds ids;
  private final QifCount count;
  private int issueNumber;

  CapabilitySection(QifJob from, QifXml xml, QifIds ids, QifCount count) {
    this.from = from;
    this.xml = xml;
    this.ids = ids;
    this.count = count;
  }

  /** Capability needs readings. */
  boolean any() {
    return !from.capabilities().isEmpty() && count.readings() > 0;
  }

  void plan() throws XMLStreamException {
    xml.open("StatisticalStudyPlans", "n", 1);
    xml.open("CapabilityStudyPlan", "id", QifIds.CAPABILITY_PLAN);
    int positions = count.positions().names().size();
    xml.ids("CharacteristicItemIds", IntStream.range(0, positions).mapToObj(ids::item).toList());
    xml.text("Name", name());
    xml.text("SoftwareId", QifIds.SOFTWARE);
    xml.text("NumberOfSamples", count.pieces().count());
    xml.only("PpkThreshold", "Limit", Double.toString(CapabilityVerdict.CAPABLE));
    xml.close();
    xml.close();
  }

  private String name() {
    return "capability of job " + from.job().name();
  }

  void results() throws XMLStreamException {
    xml.open("CapabilityStudyResults", "id", QifIds.CAPABILITY);
    xml.only("Status", "StatsEvalStatusEnum", "INFORMATIONAL");
    xml.text("SoftwareId", QifIds.SOFTWARE);
    xml.text("Name", name());
    xml.text("StudyId", QifIds.CAPABILITY_PLAN);
    int groups = count.pieces().groups();
    xml.ids(
        "ResultsIds",
        groups,
        taker -> IntStream.range(0, groups).mapToLong(ids::group).forEach(taker));
    xml.open("CharacteristicsStats", "n", from.capabilities().size());
    for (QifCapability capability : from.capabilities()) {
      position(capability);
    }
    xml.close();
    xml.text("NumberOfSamples", count.pieces().count());
    xml.close();
  }

  private void position(QifCapability capability) throws XMLStreamException {
    CapabilityVerdict verdict = new CapabilityVerdict(capability.summary(), capability.inControl());
    xml.open("RadiusCharacteristicStats");
    xml.attributes(attributes(capability, verdict));
    xml.text("AlgorithmId", QifIds.ALGORITHM);
    measured(capability.summary().characteristic());
    xml.only("Status", "StatsEvalStatusEnum", QifStatus.of(verdict.statement().tone()));
    issues(capability.issues());
    values(capability);
    xml.close();
  }

  /** Every figure with its interval; QIF has elements for some values and for no interval. */
  private static Map<String, Object> attributes(
      QifCapability capability, CapabilityVerdict verdict) {
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("position", capability.summary().characteristic());
    attributes.put("verdict", verdict.statement().word());
    for (Figure figure : capability.summary().figures()) {
      put(attributes, figure.name(), figure.value());
      put(attributes, figure.name() + "Lower95", figure.lower());
      put(attributes, figure.name() + "Upper95", figure.upper());
    }
    return attributes;
  }

  /** Computed figures are told to twelve digits, in which all machines agree. */
  static void put(Map<String, Object> attributes, String name, @Nullable Double value) {
    if (value != null) {
      attributes.put(name, new BigDecimal(value).round(TOLD).doubleValue());
    }
  }

  private void measured(String position) throws XMLStreamException {
    int number = count.positions().names().indexOf(position);
    long listed = number < 0 ? 0 : count.countAt(number);
    if (listed == 0) {
      return;
    }
    xml.open("MeasuredIds");
    xml.ids(
        "Ids", listed, taker -> count.forEachAt(number, at -> taker.accept(ids.measurement(at))));
    exclusions(count.excludedAt(number));
    xml.close();
  }

  private void exclusions(Map<Integer, String> excluded) throws XMLStreamException {
    if (excluded.isEmpty()) {
      return;
    }
    xml.open("Exclusions", "n", excluded.size());
    for (Map.Entry<Integer, String> each : excluded.entrySet()) {
      xml.open("Exclusion");
      xml.text("Id", ids.measurement(each.getKey()));
      xml.only("Reason", "OtherExclusionReason", each.getValue());
      xml.close();
    }
    xml.close();
  }

  private void issues(List<QifIssue> issues) throws XMLStreamException {
    if (issues.isEmpty()) {
      return;
    }
    xml.open("StudyIssues", "n", issues.size());
    for (QifIssue issue : issues) {
      xml.open("StudyIssue", "id", ids.issue(issueNumber++));
      xml.text("Resolution", issue.says());
      List<Integer> seen = count.ordinals(issue.readingIds());
      if (!seen.isEmpty()) {
        xml.ids("CharacteristicMeasurementIds", seen.stream().map(ids::measurement).toList());
      }
      xml.close();
    }
    xml.close();
  }

  /** At least one value is wanted; without any the element is left out. */
  private void values(QifCapability capability) throws XMLStreamException {
    Map<String, Double> values = new LinkedHashMap<>();
    put(values, "Average", capability, FigureKind.MEAN);
    put(values, "StandardDeviation", capability, FigureKind.OVERALL);
    if (capability.fromRanges()) {
      put(values, "EstimatedStandardDeviation", capability, FigureKind.WITHIN);
    }
    put(values, "Maximum", capability, FigureKind.MAXIMUM);
    put(values, "Minimum", capability, FigureKind.MINIMUM);
    putLimit(values, "UpperControlLimit", capability.upperControlMm());
    putLimit(values, "LowerControlLimit", capability.lowerControlMm());
    put(values, "Cp", capability, FigureKind.CP);
    put(values, "Cpk", capability, FigureKind.CPK);
    put(values, "Pp", capability, FigureKind.PP);
    put(values, "Ppk", capability, FigureKind.PPK);
    put(values, "Cpm", capability, FigureKind.CPM);
    if (values.isEmpty()) {
      return;
    }
    xml.open("ValueStats");
    for (Map.Entry<String, Double> value : values.entrySet()) {
      xml.open(value.getKey());
      xml.decimal("Value", value.getValue(), PLACES);
      xml.close();
    }
    xml.close();
  }

  private static void put(
      Map<String, Double> values, String name, QifCapability capability, FigureKind kind) {
    putLimit(values, name, capability.summary().figure(kind).map(Figure::value).orElse(null));
  }

  private static void putLimit(Map<String, Double> values, String name, @Nullable Double value) {
    if (value != null) {
      values.put(name, value);
    }
  }
}
