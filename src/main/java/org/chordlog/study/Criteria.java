package org.chordlog.study;

import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * Limits that figures are judged by. The usual ones: gauge at most 30 % of the study variation and
 * of the tolerance, 10 % being good, and at least 5 categories (automotive reference manual on
 * measurement systems, 4th edition, chapter II, from memory); Cg and Cgk at least 1.33 (common
 * practice); Q of the measuring system at most 15 % and of the process 30 % (ISO 22514-7, from
 * memory). {@code permittedBias} is in the study's unit, null where none is stated.
 */
public record Criteria(
    double gaugePercent,
    double goodPercent,
    double categories,
    double cg,
    double systemPercent,
    double processPercent,
    @Nullable Double permittedBias) {
  public static final Criteria USUAL = new Criteria(30, 10, 5, 1.33, 15, 30, null);

  public Criteria {
    Check.positive("gauge percent", gaugePercent);
    Check.positive("good percent", goodPercent);
    Check.positive("categories", categories);
    Check.positive("Cg", cg);
    Check.positive("Q_MS percent", systemPercent);
    Check.positive("Q_MP percent", processPercent);
    if (permittedBias != null) {
      Check.positive("permitted bias", permittedBias);
    }
  }

  /** The same with another greatest share of the gauge, percent. */
  public Criteria withGaugePercent(double percent) {
    return new Criteria(
        percent, goodPercent, categories, cg, systemPercent, processPercent, permittedBias);
  }

  /** The same with another permitted bias, null for none. */
  public Criteria withPermittedBias(@Nullable Double bias) {
    return new Criteria(
        gaugePercent, goodPercent, categories, cg, systemPercent, processPercent, bias);
  }
}
