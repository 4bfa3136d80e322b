package org.chordlog.report.qif;

import org.chordlog.measure.Decision;
import org.chordlog.study.StudyVerdict;
import org.chordlog.verdict.Tone;

/** Decisions in the words of QIF. A piece has no INDETERMINATE there: it is UNKNOWN. */
enum QifStatus {
  PASS,
  FAIL,
  UNKNOWN;

  static String of(Decision decision) {
    return switch (decision) {
      case CONFORMS -> "PASS";
      case DOES_NOT_CONFORM -> "FAIL";
      case UNDECIDED -> "INDETERMINATE";
      case NO_LIMITS -> "NOT_ANALYZED";
    };
  }

  static QifStatus piece(Decision decision) {
    return switch (decision) {
      case CONFORMS -> PASS;
      case DOES_NOT_CONFORM -> FAIL;
      case UNDECIDED, NO_LIMITS -> UNKNOWN;
    };
  }

  /** A piece passes where all of it does, and fails where any of it does. */
  QifStatus and(QifStatus other) {
    if (this == FAIL || other == FAIL) {
      return FAIL;
    }
    return this == PASS && other == PASS ? PASS : UNKNOWN;
  }

  static String of(StudyVerdict verdict) {
    return switch (verdict) {
      case PASSES -> "PASS";
      case FAILS -> "FAIL";
      case UNDECIDED -> "INFORMATIONAL";
    };
  }

  static String of(Tone tone) {
    return switch (tone) {
      case GOOD -> "PASS";
      case BAD -> "FAIL";
      default -> "INFORMATIONAL";
    };
  }
}
