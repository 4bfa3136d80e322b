package org.chordlog.measure;

/**
 * The two-foot carrier. {@code spanMm} is the distance of the feet's contact centres on a flat,
 * {@code footRadiusMm} 0 for an edge; the uncertainties are standard uncertainties; {@code
 * skewLimitDegrees} is how far (±) it may stand turned out of the bend plane.
 */
public record Bridge(
    long id,
    String name,
    double spanMm,
    double spanUncertaintyMm,
    double footRadiusMm,
    double footRadiusUncertaintyMm,
    double skewLimitDegrees) {
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
}
