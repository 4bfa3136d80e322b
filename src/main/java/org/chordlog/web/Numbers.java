package org.chordlog.web;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Numbers in files. */
final class Numbers {
  private Numbers() {}

  /** All digits without a power of ten, so that it is read back the same; empty for null. */
  static String plain(@Nullable Double value) {
    return value == null ? "" : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
