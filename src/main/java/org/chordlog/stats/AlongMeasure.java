package org.chordlog.stats;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.StatisticsPlan;

/** What is charted of a piece that ran through beside its mean radius, percent of curvature. */
public enum AlongMeasure {
  /** Largest less smallest local curvature. It has no lower limit, and is skewed upwards. */
  RANGE("range", "range along"),
  /** End less start, by the line of least squares. */
  TREND("end less start", "end less start");

  private static final RunRules OF_SKEWED = RunRules.only(RunTest.BEYOND_LIMIT, RunTest.SAME_SIDE);

  private final String title;
  private final String quantity;

  AlongMeasure(String title, String quantity) {
    this.title = title;
    this.quantity = quantity;
  }

  public String title() {
    return title;
  }

  /** What a record names it by, unlike any position of a piece. */
  public String characteristic() {
    return title + " along the pieces";
  }

  /** The measure that a record names so; empty for a position of a piece. */
  public static Optional<AlongMeasure> named(String characteristic) {
    return Arrays.stream(values())
        .filter(each -> each.characteristic().equals(characteristic))
        .findFirst();
  }

  /** One value a piece, without specification limits; tests 5 to 8 suppose symmetry. */
  StatisticsPlan plan() {
    ChartSettings usual = ChartSettings.usual();
    return new StatisticsPlan(
        quantity,
        "%",
        Limits.NONE,
        List.of(title),
        new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1),
        this == RANGE ? usual.withRunRules(OF_SKEWED) : usual);
  }
}
