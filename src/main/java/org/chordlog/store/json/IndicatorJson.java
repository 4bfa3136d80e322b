package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Indicator;

/** An indicator. */
record IndicatorJson(
    @JsonProperty("resolutionMm") double resolutionMm,
    @JsonProperty("permissibleErrorMm") double permissibleErrorMm,
    @JsonProperty("travelMm") double travelMm) {
  static IndicatorJson of(Indicator indicator) {
    return new IndicatorJson(
        indicator.resolutionMm(), indicator.permissibleErrorMm(), indicator.travelMm());
  }

  Indicator indicator() {
    return new Indicator(resolutionMm, permissibleErrorMm, travelMm);
  }
}
