package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.jspecify.annotations.Nullable;

/** A bridge. */
record BridgeJson(
    @JsonProperty("id") long id,
    @JsonProperty("name") String name,
    @JsonProperty("spanMm") double spanMm,
    @JsonProperty("spanUncertaintyMm") double spanUncertaintyMm,
    @JsonProperty("footRadiusMm") double footRadiusMm,
    @JsonProperty("footRadiusUncertaintyMm") double footRadiusUncertaintyMm,
    @JsonProperty("skewLimitDegrees") double skewLimitDegrees,
    @JsonProperty("footKind") @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable FootKind footKind) {
  static BridgeJson of(Bridge bridge) {
    return new BridgeJson(
        bridge.id(),
        bridge.name(),
        bridge.spanMm(),
        bridge.spanUncertaintyMm(),
        bridge.footRadiusMm(),
        bridge.footRadiusUncertaintyMm(),
        bridge.skewLimitDegrees(),
        bridge.footKind());
  }

  Bridge bridge() {
    return new Bridge(
        id,
        name,
        new Bridge.Span(spanMm, spanUncertaintyMm),
        new Bridge.Feet(footRadiusMm, footRadiusUncertaintyMm, footKind),
        skewLimitDegrees);
  }
}
