package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** A specification; decided by the mean where nothing else is said. */
record SpecificationJson(
    @JsonProperty("face") Face face,
    @JsonProperty("targetMm") double targetMm,
    @JsonProperty("lowerLimitMm") @Nullable Double lowerLimitMm,
    @JsonProperty("upperLimitMm") @Nullable Double upperLimitMm,
    @JsonProperty("decideBy") @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable DecideBy decideBy) {
  static SpecificationJson of(Specification specification) {
    return new SpecificationJson(
        specification.face(),
        specification.targetMm(),
        specification.lowerLimitMm(),
        specification.upperLimitMm(),
        specification.decideBy() == DecideBy.MEAN ? null : specification.decideBy());
  }

  Specification specification() {
    return new Specification(
        face, targetMm, lowerLimitMm, upperLimitMm, decideBy == null ? DecideBy.MEAN : decideBy);
  }
}
