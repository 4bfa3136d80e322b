package org.chordlog.cli.correction;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.Arc.Feature;
import org.chordlog.measure.Decimals;

/** An arc at one radius: what each feature is, was to be, and how it changes with the radius. */
record ArcAnswer(
    Arc arc,
    double developedMm,
    double radiusMm,
    double radiusStandardUncertaintyMm,
    List<Line> features,
    Feature checkBy)
    implements ClosingAnswer {
  /** {@code perMm}: change for one mm of radius, at the target. */
  record Line(
      Feature feature,
      double targetMm,
      double valueMm,
      double standardUncertaintyMm,
      double perMm) {
    double differenceMm() {
      return valueMm - targetMm;
    }
  }

  static ArcAnswer of(Arc arc, double radiusMm, double u) {
    List<Line> lines = new ArrayList<>();
    for (Feature feature : Feature.values()) {
      lines.add(
          new Line(
              feature,
              arc.valueMm(feature, arc.targetMm()),
              arc.valueMm(feature, radiusMm),
              arc.uncertaintyMm(feature, u),
              arc.sensitivity(feature)));
    }
    return new ArcAnswer(arc, arc.developedMm(), radiusMm, u, lines, arc.mostSensitive());
  }

  @Override
  public String text(LengthOptions lengths) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Arc of %.1f° about %s, developed length %s, bent to %s:%n",
            Math.toDegrees(arc.angleRadians()),
            lengths.statedWithUnit(arc.targetMm()),
            lengths.textWithUnit(developedMm, 1),
            ClosingAnswer.with(lengths, radiusMm, radiusStandardUncertaintyMm)));
    features.forEach(line -> text.append(text(line, lengths)));
    return text.append("Check it by the ").append(checkBy.words()).append('.').toString();
  }

  private static String text(Line line, LengthOptions lengths) {
    return String.format(
        Locale.ROOT,
        "  %-60s %s, to be %s, changes by %s a unit of radius%n",
        line.feature().words(),
        ClosingAnswer.with(lengths, line.valueMm(), line.standardUncertaintyMm()),
        lengths.text(line.targetMm(), 2),
        Decimals.fixed(line.perMm(), 3));
  }
}
