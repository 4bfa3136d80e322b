package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * The two-foot carrier. {@code spanMm} is the distance of the feet's contact centres on a flat,
 * {@code footRadiusMm} 0 for an edge; the uncertainties are standard uncertainties; {@code
 * skewLimitDegrees} is how far (±) it may stand turned out of the bend plane; {@code footKind} null
 * where it is not known.
 */
public record Bridge(
    long id,
    String name,
    double spanMm,
    double spanUncertaintyMm,
    double footRadiusMm,
    double footRadiusUncertaintyMm,
    double skewLimitDegrees,
    @Nullable FootKind footKind) {
  public Bridge {
    Check.text("name", name);
    Check.positive("spanMm", spanMm);
    Check.notNegative("spanUncertaintyMm", spanUncertaintyMm);
    Check.notNegative("footRadiusMm", footRadiusMm);
    Check.notNegative("footRadiusUncertaintyMm", footRadiusUncertaintyMm);
    Check.within("skewLimitDegrees", skewLimitDegrees, 0, 45);
    if (!(footRadiusMm < spanMm / 2)) {
      throw new BadInput("footRadiusMm", footRadiusMm, "meets the other foot", "below span / 2");
    }
  }

  /** One whose feet are of no known kind. */
  public Bridge(
      long id,
      String name,
      double spanMm,
      double spanUncertaintyMm,
      double footRadiusMm,
      double footRadiusUncertaintyMm,
      double skewLimitDegrees) {
    this(
        id,
        name,
        spanMm,
        spanUncertaintyMm,
        footRadiusMm,
        footRadiusUncertaintyMm,
        skewLimitDegrees,
        null);
  }
}
