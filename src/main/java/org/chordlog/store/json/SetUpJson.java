package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Face;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/** A set-up; without a zero or a calibration, those are null. */
record SetUpJson(
    @JsonProperty("bridge") BridgeJson bridge,
    @JsonProperty("indicator") IndicatorJson indicator,
    @JsonProperty("zero") @Nullable ZeroJson zero,
    @JsonProperty("calibration") @Nullable CalibrationJson calibration,
    @JsonProperty("section") SectionJson section,
    @JsonProperty("measuredFace") Face measuredFace,
    @JsonProperty("specifiedFace") Face specifiedFace) {
  static SetUpJson of(SetUp setUp) {
    return new SetUpJson(
        BridgeJson.of(setUp.bridge()),
        IndicatorJson.of(setUp.indicator()),
        setUp.zero() == null ? null : ZeroJson.of(setUp.zero()),
        setUp.calibration() == null ? null : CalibrationJson.of(setUp.calibration()),
        SectionJson.of(setUp.section()),
        setUp.measuredFace(),
        setUp.specifiedFace());
  }

  SetUp setUp() {
    return new SetUp(
        bridge.bridge(),
        indicator.indicator(),
        zero == null ? null : zero.zero(),
        calibration == null ? null : calibration.calibration(),
        section.section(),
        measuredFace,
        specifiedFace);
  }
}
