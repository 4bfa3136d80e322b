package org.chordlog.chart;

import org.chordlog.measure.Lengths;
import org.chordlog.stats.control.ChartKind;

/** The words on the pictures. */
final class ChartWords {
  private ChartWords() {}

  static String of(ChartKind kind, String quantity) {
    return switch (kind) {
      case INDIVIDUALS -> capital(quantity);
      case MOVING_RANGE -> "Moving range";
      case MEAN -> "Mean";
      case RANGE -> "Range";
      case STANDARD_DEVIATION -> "Std. deviation";
      case EWMA -> "EWMA";
      case CUSUM -> "CUSUM";
    };
  }

  static String counted(ChartKind kind) {
    return switch (kind) {
      case MEAN, RANGE, STANDARD_DEVIATION -> "Subgroup";
      case INDIVIDUALS, MOVING_RANGE, EWMA, CUSUM -> "Reading";
    };
  }

  /** "1 event", "3 events". */
  static String counted(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  static String number(double value, int decimals) {
    return Lengths.rounded(value, decimals).replace('-', '\u2212');
  }
}
