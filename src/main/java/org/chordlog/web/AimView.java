package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/** The depths, relative to the zero, that the target radius and the specification limits give. */
record AimView(
    @JsonPropertyDescription("at the target radius") double depthMm,
    @JsonPropertyDescription("at the lower specification limit; null without one")
        @Nullable Double atLowerLimitMm,
    @JsonPropertyDescription("at the upper specification limit; null without one")
        @Nullable Double atUpperLimitMm) {

  /** Null where the feet can't stand on the target radius. */
  static @Nullable AimView of(SetUp setUp, Specification specification) {
    RadiusModel model = RadiusModel.of(setUp);
    Double target = depth(model, specification.targetMm());
    return target == null
        ? null
        : new AimView(
            target,
            depth(model, specification.lowerLimitMm()),
            depth(model, specification.upperLimitMm()));
  }

  private static @Nullable Double depth(RadiusModel model, @Nullable Double radiusMm) {
    if (radiusMm == null) {
      return null;
    }
    try {
      return model.depthForMm(radiusMm);
    } catch (BadInput outOfReach) {
      return null;
    }
  }
}
