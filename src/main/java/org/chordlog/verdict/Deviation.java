package org.chordlog.verdict;

import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;

/** Which way a radius is off its target. */
enum Deviation {
  TOO_WIDE("Too wide", "it needs more bend"),
  TOO_TIGHT("Too tight", "it needs less bend");

  private final String word;
  private final String need;

  Deviation(String word, String need) {
    this.word = word;
    this.need = need;
  }

  /** A flat counts as too wide. */
  static Deviation of(RadiusEstimate radius, Specification specification) {
    Double mm = radius.radiusMm();
    return mm == null || mm > specification.targetMm() ? TOO_WIDE : TOO_TIGHT;
  }

  String word() {
    return word;
  }

  String need() {
    return need;
  }
}
