package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Bridge;

/** A bridge. */
record BridgeJson(
    @JsonProperty("id") long id,
    @JsonProperty("name") String name,
    @JsonProperty("spanMm") double spanMm,
    @JsonProperty("spanUncertaintyMm") double spanUncertaintyMm,
    @JsonProperty("footRadiusMm") double footRadiusMm,
    @JsonProperty("footRadiusUncertaintyMm") double footRadiusUncertaintyMm,
    @JsonProperty("skewLimitDegrees") double skewLimitDegrees) {
  static BridgeJson of(Bridge bridge) {
    return new BridgeJson(
        bridge.id(),
        bridge.name(),
        bridge.spanMm(),
        bridge.spanUncertaintyMm(),
        bridge.footRadiusMm(),
        bridge.footRadiusUncertaintyMm(),
        bridge.skewLimitDegrees());
  }

  Bridge bridge() {
    return new Bridge(
        id,
        name,
        spanMm,
        spanUncertaintyMm,
        footRadiusMm,
        footRadiusUncertaintyMm,
        skewLimitDegrees);
  }
}
