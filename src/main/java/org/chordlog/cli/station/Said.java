package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import org.chordlog.measure.Quantity;

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
    double lower = reading.path("lowerMm").asDouble();
    JsonNode upper = reading.path("upperMm");
    double expanded = upper.isNumber() ? (upper.asDouble() - lower) / 2 : radius.asDouble() - lower;
    return Quantity.of(radius.asDouble(), expanded);
  }
}
