package org.chordlog.chart;

import org.chordlog.measure.Capital;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;

/** The words on the pictures. */
final class ChartWords {
  private ChartWords() {}

  static String of(ChartKind kind, String quantity) {
    return switch (kind) {
      case INDIVIDUALS -> Capital.of(quantity);
      case MOVING_RANGE -> "Moving range";
      case MEAN -> "Mean";
      case RANGE -> "Range";
      case STANDARD_DEVIATION -> "Std. deviation";
      case EWMA -> "EWMA";
      case CUSUM -> "CUSUM";
    };
  }

  /** What its points are: EWMA and CUSUM go by whatever the job's subgroups are. */
  static String counted(ChartSnapshot chart) {
    boolean subgroups =
        switch (chart.kind()) {
          case MEAN, RANGE, STANDARD_DEVIATION -> true;
          case INDIVIDUALS, MOVING_RANGE -> false;
          case EWMA, CUSUM -> chart.points().stream().anyMatch(point -> point.size() > 1);
        };
    return subgroups ? "Subgroup" : "Reading";
  }

  /** "1 event", "3 events". */
  static String counted(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  static String number(double value, int decimals) {
    return Decimals.fixed(value, decimals);
  }
}
