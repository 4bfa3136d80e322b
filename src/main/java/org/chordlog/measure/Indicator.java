package org.chordlog.measure;

/**
 * A digital depth indicator: its step, its permissible error (the ± limit its data sheet states)
 * and its travel.
 */
public record Indicator(double resolutionMm, double permissibleErrorMm, double travelMm) {
  public Indicator {
    Check.positive("resolutionMm", resolutionMm);
    Check.notNegative("permissibleErrorMm", permissibleErrorMm);
    if (!(Check.positive("travelMm", travelMm) > resolutionMm)) {
      throw new BadInput(
          "travelMm",
          travelMm,
          "is within one step",
          Sentence.of("above %s", Quantity.stated(resolutionMm)));
    }
  }
}
