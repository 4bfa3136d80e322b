package org.chordlog.correction.closing;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * An arc as ordered: target radius and the angle it turns through, up to a full turn. Its developed
 * length stays when it is bent to another radius, or its angle where the ends are cut after
 * bending.
 */
public record Arc(double targetMm, double angleRadians, Fixed fixed) {
  /** What does not change with the radius. */
  public enum Fixed {
    LENGTH,
    ANGLE
  }

  /** What can be measured on an arc to check its radius. */
  public enum Feature {
    CHORD("chord from end to end"),
    RISE("rise of the middle above the chord"),
    END_OFFSET("offset of one end from the drawing, the other clamped on it");

    private final String words;

    Feature(String words) {
      this.words = words;
    }

    /** What of the arc is given. */
    public String words() {
      return words;
    }
  }

  /** Below that share of the most sensitive feature's, a feature says too little of the radius. */
  private static final double SAYS_NOTHING = 0.02;

  private static final double DIFFERENCE = 1e-6;

  private static final double FULL_CIRCLE_DEGREES = 360;

  public Arc {
    Check.positive("targetMm", targetMm);
    Check.within("angle", Check.positive("angle", angleRadians), 0, 2 * Math.PI * (1 + 1e-12));
  }

  /** An arc of that angle. */
  public static Arc ofDegrees(double targetMm, double degrees, Fixed fixed) {
    Check.within("angle", Check.positive("angle", degrees), 0, FULL_CIRCLE_DEGREES);
    return new Arc(targetMm, Math.toRadians(degrees), fixed);
  }

  /** An arc of that developed length, mm. */
  public static Arc ofDeveloped(double targetMm, double developedMm) {
    double length = Check.positive("developedMm", developedMm);
    return new Arc(targetMm, length / Check.positive("targetMm", targetMm), Fixed.LENGTH);
  }

  public double developedMm() {
    return targetMm * angleRadians;
  }

  private double angleAt(double radiusMm) {
    return fixed == Fixed.LENGTH ? developedMm() / radiusMm : angleRadians;
  }

  /** Bent to that radius; an end offset is positive where the arc is too open. */
  public double valueMm(Feature feature, double radiusMm) {
    double radius = Check.positive("radiusMm", radiusMm);
    double half = angleAt(radius) / 2;
    return switch (feature) {
      case CHORD -> 2 * radius * Math.sin(half);
      case RISE -> radius * (1 - Math.cos(half));
      case END_OFFSET -> endOffset(radius);
    };
  }

  private double endOffset(double radius) {
    double turned = angleAt(radius);
    double along = radius * Math.sin(turned) - targetMm * Math.sin(angleRadians);
    double across = radius * (1 - Math.cos(turned)) - targetMm * (1 - Math.cos(angleRadians));
    return Math.copySign(Math.hypot(along, across), radius - targetMm);
  }

  /** Change of a feature for one mm of radius, at the target. */
  public double sensitivity(Feature feature) {
    double half = angleRadians / 2;
    boolean length = fixed == Fixed.LENGTH;
    return switch (feature) {
      case CHORD -> 2 * (Math.sin(half) - (length ? half * Math.cos(half) : 0));
      case RISE -> 1 - Math.cos(half) - (length ? half * Math.sin(half) : 0);
      case END_OFFSET -> endSensitivity(length);
    };
  }

  private double endSensitivity(boolean length) {
    double along = Math.sin(angleRadians) - (length ? angleRadians * Math.cos(angleRadians) : 0);
    double across =
        1 - Math.cos(angleRadians) - (length ? angleRadians * Math.sin(angleRadians) : 0);
    return Math.hypot(along, across);
  }

  /** The feature that changes most with the radius: the one to check it by. */
  public Feature mostSensitive() {
    Feature best = Feature.CHORD;
    for (Feature each : Feature.values()) {
      best = Math.abs(sensitivity(each)) > Math.abs(sensitivity(best)) ? each : best;
    }
    return best;
  }

  /**
   * The radius that a measured feature shows, near the target. {@link BadInput} where the feature
   * hardly changes with the radius (the rise of an arc of 267°), or no radius near gives it.
   */
  public double radiusMm(Feature feature, double measuredMm) {
    Check.finite("measuredMm", measuredMm);
    if (!tells(feature)) {
      throw new BadInput(
          "feature",
          feature.words(),
          "says nothing of the radius of this arc",
          mostSensitive().words());
    }
    double wanted = measuredMm - valueMm(feature, targetMm);
    double step = Math.signum(wanted) * Math.signum(sensitivity(feature)) * targetMm * DIFFERENCE;
    double end = targetMm;
    while (step != 0
        && Math.abs(valueMm(feature, end) - valueMm(feature, targetMm)) < Math.abs(wanted)) {
      double next = end + step;
      if (!rises(feature, end, next)) {
        throw new BadInput(
            "measuredMm", measuredMm, "is given by no radius near the target", "a smaller error");
      }
      end = next;
      step *= 2;
    }
    return step == 0
        ? targetMm
        : Root.between(
            Math.min(targetMm, end),
            Math.max(targetMm, end),
            radius -> valueMm(feature, radius) - measuredMm);
  }

  /** Whether the feature goes on changing the same way, away from the target. */
  private boolean rises(Feature feature, double from, double to) {
    double start = valueMm(feature, targetMm);
    boolean near = to > targetMm / 2 && to < 2 * targetMm;
    return near
        && Math.abs(valueMm(feature, to) - start) > Math.abs(valueMm(feature, from) - start);
  }

  private boolean tells(Feature feature) {
    double most = Math.abs(sensitivity(mostSensitive()));
    return Math.abs(sensitivity(feature)) > SAYS_NOTHING * most;
  }

  /** Of a feature for one of the radius. */
  public double uncertaintyMm(Feature feature, double radiusUncertaintyMm) {
    return Math.abs(sensitivity(feature))
        * Check.notNegative("radiusUncertaintyMm", radiusUncertaintyMm);
  }

  /** Of the radius for one of the measured feature. */
  public double radiusUncertaintyMm(Feature feature, double uncertaintyMm) {
    return Check.notNegative("uncertaintyMm", uncertaintyMm) / Math.abs(sensitivity(feature));
  }
}
