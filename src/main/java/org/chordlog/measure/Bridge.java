package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * The two-foot carrier. {@code skewLimitDegrees} is how far (±) it may stand turned out of the bend
 * plane.
 */
public record Bridge(long id, String name, Span span, Feet feet, double skewLimitDegrees) {
  /** Narrower, the feet leave no place for a plunger. */
  private static final double LEAST_SPAN_MM = 1;

  /** Nobody lifts a longer one onto a bend. */
  private static final double MOST_SPAN_MM = 10_000;

  /**
   * The distance of the feet's contact centres on a flat, and its standard uncertainty.
   *
   * <p>{@link BadInput} unless the span is above 0 and its uncertainty at least 0
   */
  public record Span(double lengthMm, double uncertaintyMm) {
    public Span {
      Check.positive("spanMm", lengthMm);
      Check.notNegative("spanUncertaintyMm", uncertaintyMm);
    }
  }

  /**
   * Both feet: their radius, 0 for an edge, its standard uncertainty, and their kind where it is
   * known.
   *
   * <p>{@link BadInput} unless both lengths are at least 0
   */
  public record Feet(double radiusMm, double radiusUncertaintyMm, @Nullable FootKind kind) {
    public Feet {
      Check.notNegative("footRadiusMm", radiusMm);
      Check.notNegative("footRadiusUncertaintyMm", radiusUncertaintyMm);
    }

    /** Feet of no known kind. */
    public Feet(double radiusMm, double radiusUncertaintyMm) {
      this(radiusMm, radiusUncertaintyMm, null);
    }
  }

  public Bridge {
    Check.text("name", name);
    Check.within("skewLimitDegrees", skewLimitDegrees, 0, 45);
    if (!(feet.radiusMm() < span.lengthMm() / 2)) {
      throw new BadInput("footRadiusMm", feet.radiusMm(), "meets the other foot", "below span / 2");
    }
  }

  /**
   * The same bridge, for one that is new; {@link BadInput} for a span that no bridge has, as where
   * metres were typed for mm, or a name that fits in no line. What is stored already stays
   * readable.
   */
  public Bridge possible() {
    Check.name("name", name);
    Check.lengthWithin("spanMm", spanMm(), LEAST_SPAN_MM, MOST_SPAN_MM);
    return this;
  }

  /** The same bridge under another id; 0 for one that is not stored. */
  public Bridge withId(long other) {
    return new Bridge(other, name, span, feet, skewLimitDegrees);
  }

  public double spanMm() {
    return span.lengthMm();
  }

  public double spanUncertaintyMm() {
    return span.uncertaintyMm();
  }

  public double footRadiusMm() {
    return feet.radiusMm();
  }

  public double footRadiusUncertaintyMm() {
    return feet.radiusUncertaintyMm();
  }

  public @Nullable FootKind footKind() {
    return feet.kind();
  }
}
