package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/** Lengths of an answer of the service, as fine as what it says of their uncertainty. */
final class Said {
  private Said() {}

  /** A depth beside its scatter, a standard deviation. */
  static Quantity depth(JsonNode of, String field, String scatter) {
    return Quantity.of(of.path(field).asDouble(), 2 * of.path(scatter).asDouble());
  }

  /** A span beside its covariance. */
  static Quantity span(JsonNode fitted) {
    double variance = fitted.path("covariance").path(0).path(0).asDouble();
    return Quantity.of(fitted.path("spanMm").asDouble(), 2 * Math.sqrt(variance));
  }

  /** The radius of a reading by its interval, or "flat". */
  static Object radius(JsonNode reading) {
    JsonNode radius = reading.path("radiusMm");
    if (!radius.isNumber()) {
      return "flat";
    }
    return Quantity.of(radius.asDouble(), expandedMm(reading));
  }

  /** Where the true radius is to be looked for; empty where that has no upper end. */
  static Object between(JsonNode reading) {
    if (!reading.path("radiusMm").isNumber() || !reading.path("upperMm").isNumber()) {
      return "";
    }
    double expanded = expandedMm(reading);
    return Sentence.of(
        ", between %s and %s",
        Quantity.of(reading.path("lowerMm").asDouble(), expanded).withoutUnit(),
        Quantity.of(reading.path("upperMm").asDouble(), expanded).withoutUnit());
  }

  private static double expandedMm(JsonNode reading) {
    double lower = reading.path("lowerMm").asDouble();
    JsonNode upper = reading.path("upperMm");
    return upper.isNumber()
        ? (upper.asDouble() - lower) / 2
        : reading.path("radiusMm").asDouble() - lower;
  }
}
