package org.chordlog.verdict;

import java.util.Locale;
import java.util.Optional;
import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.Summary;
import org.jspecify.annotations.Nullable;

/**
 * Is the gauge good enough for this tolerance? By the share of the tolerance that six of its
 * standard deviations take: up to 10 % is good and above 30 % is not (the bounds of ISO 22514-7 and
 * of common practice in gauge studies). Where a study of the gauge was done it decides, by its
 * whole interval, since it knows what operators and places do; else the budget of the readings.
 */
record GaugeVerdict(Summary summary, Specification specification, @Nullable StudiedGauge studied) {
  private static final double GOOD = 0.1;
  private static final double LIMIT = 0.3;

  /** By the study where one was done, else by the budget of the readings. */
  Statement statement() {
    StudiedGauge study = studied;
    Double width = width();
    if (study != null && width != null) {
      return judged(study, 600 / width);
    }
    Optional<Double> share = share();
    return share.map(GaugeVerdict::judged).orElse(unknown());
  }

  /** Part of the tolerance; empty with fewer than two limits or without readings. */
  Optional<Double> share() {
    Double tolerance = width();
    if (tolerance == null) {
      return Optional.empty();
    }
    return summary.figure(FigureKind.GAUGE).map(Figure::value).map(sigma -> 6 * sigma / tolerance);
  }

  private @Nullable Double width() {
    Double lower = specification.lowerLimitMm();
    Double upper = specification.upperLimitMm();
    return lower == null || upper == null ? null : (Double) (upper - lower);
  }

  /** {@code percent} of the tolerance a mm of standard deviation. */
  private static Statement judged(StudiedGauge study, double percent) {
    Double lower = study.lowerMm();
    Double upper = study.upperMm();
    String found =
        String.format(
            Locale.ROOT,
            "By the study %s it takes %.0f %% of the tolerance (%.0f to %s)",
            study.study(),
            percent * study.sigmaMm(),
            lower == null ? 0 : percent * lower,
            upper == null ? "open" : String.format(Locale.ROOT, "%.0f", percent * upper));
    if (upper != null && percent * upper <= 100 * LIMIT) {
      return percent * study.sigmaMm() <= 100 * GOOD
          ? Statement.of(Tone.GOOD, "Gauge good enough", found + ".")
          : Statement.of(
              Tone.OPEN, "Gauge acceptable", found + "; above 10 % it costs capability.");
    }
    return lower != null && percent * lower > 100 * LIMIT
        ? Statement.of(Tone.BAD, "Gauge too coarse", found + "; at most 30 % is allowed.")
        : Statement.of(
            Tone.OPEN,
            "Gauge not proven",
            found + "; a larger study shows whether it takes more than 30 %.");
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
