package org.chordlog.web;

import java.math.BigDecimal;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** A specification on one line, its lengths as short as they were given. */
final class SpecificationWords {
  private SpecificationWords() {}

  static String of(Specification s) {
    return "target %s, %s to %s, on the %s"
        .formatted(
            length(s.targetMm(), "none"),
            length(s.lowerLimitMm(), "no lower limit"),
            length(s.upperLimitMm(), "no upper limit"),
            s.face().words());
  }

  private static String length(@Nullable Double mm, String none) {
    return mm == null ? none : BigDecimal.valueOf(mm).stripTrailingZeros().toPlainString() + " mm";
  }
}
