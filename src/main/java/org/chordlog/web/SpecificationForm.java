package org.chordlog.web;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.jspecify.annotations.Nullable;

/** The radius asked for, with the specification limits that there are. */
record SpecificationForm(
    @Nullable Face face,
    @Nullable Double targetMm,
    @Nullable Double lowerLimitMm,
    @Nullable Double upperLimitMm,
    @Nullable DecideBy decideBy) {
  Specification specification() {
    if (face == null) {
      throw new BadInput("face", "", "is missing", Call.names(Face.class));
    }
    double target = Faults.number(targetMm, "targetMm");
    Specification made =
        new Specification(
            face, target, lowerLimitMm, upperLimitMm, decideBy == null ? DecideBy.MEAN : decideBy);
    if (lowerLimitMm != null && target < lowerLimitMm) {
      throw new BadInput(
          "targetMm", target, "is below the lower limit", bound("from", lowerLimitMm));
    }
    if (upperLimitMm != null && target > upperLimitMm) {
      throw new BadInput(
          "targetMm", target, "is above the upper limit", bound("up to", upperLimitMm));
    }
    return made;
  }

  static SpecificationForm of(Specification s) {
    return new SpecificationForm(
        s.face(), s.targetMm(), s.lowerLimitMm(), s.upperLimitMm(), s.decideBy());
  }

  private static Sentence bound(String side, double mm) {
    return Sentence.of("%s %s", side, Quantity.stated(mm));
  }
}
