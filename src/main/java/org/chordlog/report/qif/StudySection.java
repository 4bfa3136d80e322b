package org.chordlog.report.qif;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyKind;
import org.chordlog.study.StudyResult;

/**
 * Studies of the gauge. Elements named Relative are relative to the tolerance in QIF, so shares of
 * the study variation are attributes; so are all intervals.
 */
final class StudySection {
  private static final int PLACES = 9;

  /** QIF's elements for figures of these names. */
  private static final Map<String, String> ELEMENTS = elements();

  private final QifXml xml;
  private final QifIds ids;

  StudySection(QifXml xml, QifIds ids) {
    this.xml = xml;
    this.ids = ids;
  }

  private static Map<String, String> elements() {
    Map<String, String> elements = new LinkedHashMap<>();
    elements.put("AV", "AppraiserVariation");
    elements.put("EV", "EquipmentVariation");
    elements.put("byEye", "EquipmentVariation");
    elements.put("IA", "Interaction");
    elements.put("GRR", "GageRandR");
    elements.put("PV", "PartVariation");
    elements.put("TV", "TotalVariation");
    elements.put("percentToleranceAV", "RelativeAppraiserVariation");
    elements.put("percentToleranceEV", "RelativeEquipmentVariation");
    elements.put("percentToleranceIA", "RelativeInteraction");
    elements.put("percentToleranceGRR", "RelativeGageRandR");
    elements.put("percentTolerancePV", "RelativePartVariation");
    elements.put("percentToleranceTV", "RelativeTotalVariation");
    elements.put("mean", "Average");
    elements.put("standardDeviation", "StandardDeviation");
    elements.put("level1", "StandardDeviation");
    elements.put("bias", "Bias");
    elements.put("slope", "RegressionSlope");
    elements.put("intercept", "RegressionIntercept");
    return elements;
  }

  /** Whether QIF has an element for such a study. */
  static boolean has(QifStudy study) {
    return study.result().kind() != StudyKind.PROCESS;
  }

  void write(QifStudy study, int number) throws XMLStreamException {
    StudyResult result = study.result();
    xml.open(element(result.kind()), "id", ids.study(number));
    xml.attributes(attributes(result));
    xml.only("Status", "StatsEvalStatusEnum", QifStatus.of(result.conclusion().verdict()));
    xml.text("SoftwareId", QifIds.SOFTWARE);
    xml.text("Name", study.name());
    xml.text("Description", result.kind().words() + ": " + result.conclusion().says());
    statistics(result);
    sizes(result);
    xml.close();
  }

  private static String element(StudyKind kind) {
    return switch (kind) {
      case CROSSED, RANGE, NESTED, SPLIT, ONE_OPERATOR, PLACING -> "GageRandRStudyResults";
      case BIAS, TYPE1 -> "BiasStudyResults";
      case LINEARITY -> "LinearityStudyResults";
      case STABILITY -> "StabilityStudyResults";
      case PROCESS -> throw new IllegalStateException("QIF has no study of a process");
    };
  }

  private static Map<String, Object> attributes(StudyResult result) {
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("kind", result.kind().name().toLowerCase(Locale.ROOT));
    attributes.put("design", result.design());
    attributes.put("verdict", result.conclusion().verdict().name().toLowerCase(Locale.ROOT));
    result.figures().forEach(figure -> put(attributes, "", figure));
    return attributes;
  }

  static void put(Map<String, Object> attributes, String before, StudyFigure figure) {
    CapabilitySection.put(attributes, before + figure.name(), figure.value());
    CapabilitySection.put(attributes, before + figure.name() + "Lower", figure.lower());
    CapabilitySection.put(attributes, before + figure.name() + "Upper", figure.upper());
  }

  private void statistics(StudyResult result) throws XMLStreamException {
    Map<String, Double> values = new LinkedHashMap<>();
    ELEMENTS.forEach((name, element) -> result.figure(name).ifPresent(f -> value(values, f)));
    result.figure("bias").ifPresent(figure -> limits(values, figure));
    if (values.isEmpty()) {
      return;
    }
    xml.open("CharacteristicsStats", "n", 1);
    xml.open("RadiusCharacteristicStats");
    xml.only("Status", "StatsEvalStatusEnum", QifStatus.of(result.conclusion().verdict()));
    xml.open("ValueStats");
    for (Map.Entry<String, Double> value : values.entrySet()) {
      xml.open(value.getKey());
      xml.decimal("Value", value.getValue(), PLACES);
      xml.close();
    }
    xml.close();
    xml.close();
    xml.close();
  }

  /** What is relative to the tolerance is a fraction of it. */
  private static void value(Map<String, Double> values, StudyFigure figure) {
    String element = ELEMENTS.getOrDefault(figure.name(), "");
    Double value = figure.value();
    if (value != null) {
      values.put(element, element.startsWith("Relative") ? value / 100 : value);
    }
  }

  private static void limits(Map<String, Double> values, StudyFigure bias) {
    Double lower = bias.lower();
    Double upper = bias.upper();
    if (lower != null && upper != null) {
      values.put("UpperConfidenceLimit", upper);
      values.put("LowerConfidenceLimit", lower);
    }
  }

  private void sizes(StudyResult result) throws XMLStreamException {
    StudyResult.Size size = result.size();
    switch (result.kind()) {
      case CROSSED, RANGE, NESTED, SPLIT, ONE_OPERATOR, PLACING -> {
        xml.text("NumberOfAppraisers", size.operators());
        xml.text("NumberOfParts", size.parts());
        xml.text("NumberOfTrials", size.repeats());
      }
      case LINEARITY -> {
        xml.text("SampleSize", size.repeats());
        Optional<Double> fit = result.figure("R2").map(StudyFigure::value);
        if (fit.isPresent()) {
          xml.decimal("GoodnessOfFit", fit.get(), PLACES);
        }
      }
      default -> xml.text("SampleSize", size.repeats());
    }
  }
}
