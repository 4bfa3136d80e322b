package org.chordlog.profile;

import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Specification;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/**
 * What a profile is evaluated with: the set-up's model of depth to radius; where the length came
 * from and on which face it was measured; lengths known beforehand; the specification, null without
 * one, and what of a piece must meet it.
 */
public record EvaluationSettings(
    RadiusModel model,
    LengthSource source,
    Face lengthFace,
    KnownLengths lengths,
    @Nullable Specification specification,
    DecideBy decideBy) {
  double halfSpanMm() {
    return model.spanMm() / 2;
  }
}
