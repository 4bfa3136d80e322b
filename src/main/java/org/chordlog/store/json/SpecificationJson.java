package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Face;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** A specification. */
record SpecificationJson(
    @JsonProperty("face") Face face,
    @JsonProperty("targetMm") double targetMm,
    @JsonProperty("lowerLimitMm") @Nullable Double lowerLimitMm,
    @JsonProperty("upperLimitMm") @Nullable Double upperLimitMm) {
  static SpecificationJson of(Specification specification) {
    return new SpecificationJson(
        specification.face(),
        specification.targetMm(),
        specification.lowerLimitMm(),
        specification.upperLimitMm());
  }

  Specification specification() {
    return new Specification(face, targetMm, lowerLimitMm, upperLimitMm);
  }
}
