package org.chordlog.web;

import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** A specification on one line, its lengths as short as they were given. */
final class SpecificationWords {
  private SpecificationWords() {}

  static Sentence of(Specification s) {
    return Sentence.of(
        "target %s, %s to %s, on the %s",
        length(s.targetMm(), "none"),
        length(s.lowerLimitMm(), "no lower limit"),
        length(s.upperLimitMm(), "no upper limit"),
        s.face().words());
  }

  private static Object length(@Nullable Double mm, String none) {
    return mm == null ? none : Quantity.stated(mm);
  }
}
