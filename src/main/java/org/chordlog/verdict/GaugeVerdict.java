package org.chordlog.verdict;

import java.util.Locale;
import java.util.Optional;
import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.Summary;

/**
 * Is the gauge good enough for this tolerance? By the share of the tolerance that six of its
 * standard deviations take: up to 10 % is good and above 30 % is not (the bounds of ISO 22514-7 and
 * of common practice in gauge studies).
 */
public record GaugeVerdict(Summary summary, Specification specification) {
  private static final double GOOD = 0.1;
  private static final double LIMIT = 0.3;

  public Statement statement() {
    Optional<Double> share = share();
    return share.map(GaugeVerdict::judged).orElse(unknown());
  }

  /** Part of the tolerance; empty with fewer than two limits or without readings. */
  public Optional<Double> share() {
    Double lower = specification.lowerLimitMm();
    Double upper = specification.upperLimitMm();
    if (lower == null || upper == null) {
      return Optional.empty();
    }
    double tolerance = upper - lower;
    return summary.figure(FigureKind.GAUGE).map(Figure::value).map(sigma -> 6 * sigma / tolerance);
  }

  private static Statement unknown() {
    return Statement.of(
        Tone.QUIET, "Gauge not judged", "It needs readings and limits on both sides.");
  }

  private static Statement judged(double share) {
    String taken =
        String.format(
            Locale.ROOT, "Its spread takes %.0f %% of the tolerance", Math.max(1, 100 * share));
    if (share <= GOOD) {
      return Statement.of(Tone.GOOD, "Gauge good enough", taken + ".");
    }
    return share <= LIMIT
        ? Statement.of(Tone.OPEN, "Gauge acceptable", taken + "; above 10 % it costs capability.")
        : Statement.of(Tone.BAD, "Gauge too coarse", taken + "; at most 30 % is allowed.");
  }
}
