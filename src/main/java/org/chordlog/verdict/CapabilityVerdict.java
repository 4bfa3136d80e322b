package org.chordlog.verdict;

import java.util.Optional;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.Summary;
import org.jspecify.annotations.Nullable;

/**
 * Is the job capable? Judged by the interval of the index that applies, never by its value alone:
 * by percentiles where the readings are not normal. {@value #CAPABLE} is common practice, no
 * source. Where surely more is seen beyond a limit than an index of 1 has there, neither shape nor
 * control matters.
 */
public record CapabilityVerdict(Summary summary, boolean inControl) {
  public static final double CAPABLE = 1.33;
  private static final double INCAPABLE = 1;

  /** Beyond the percentile that an index of 1 has at the limit (ISO 22514-2: 99.865 %). */
  private static final double BEYOND_PPM = 1350;

  /** The index to judge and print; empty where the readings give none. */
  public Optional<Figure> index() {
    return has(Caution.Kind.NOT_NORMAL)
        ? known(FigureKind.PPK_PERCENTILE).or(() -> known(FigureKind.PPK_BOOTSTRAP))
        : known(FigureKind.PPK);
  }

  /** Good only by the whole interval of the index, and only where the process is in control. */
  public Statement statement() {
    if (has(Caution.Kind.NO_LIMITS)) {
      return Statement.of(Tone.QUIET, "No limits", "Without limits there is no capability.");
    }
    return surelyBeyond(FigureKind.BELOW_SEEN)
        .or(() -> surelyBeyond(FigureKind.ABOVE_SEEN))
        .or(() -> index().map(this::judged))
        .orElseGet(this::unknown);
  }

  /** One reading alone may be a stray one. */
  private Optional<Statement> surelyBeyond(FigureKind side) {
    return known(side)
        .filter(seen -> seen.lower() != null && seen.lower() > BEYOND_PPM && beyond(seen) > 1)
        .map(seen -> Statement.of(Tone.BAD, "Not capable", beyond(side, seen)));
  }

  private long beyond(Figure seen) {
    Double ppm = seen.value();
    return ppm == null ? 0 : Math.round(ppm * summary.count() / 1e6);
  }

  /** "7 of 14 readings are above the USL; an index of 1 has 0.135 % there." and the index. */
  private String beyond(FigureKind side, Figure seen) {
    String words =
        "%s of %s are %s; an index of 1 has 0.135 %% there."
            .formatted(
                beyond(seen),
                Counted.of(summary.count(), "reading"),
                side == FigureKind.BELOW_SEEN ? "below the LSL" : "above the USL");
    return words + index().map(index -> " " + figure(index)).orElse("");
  }

  private Statement unknown() {
    return has(Caution.Kind.NOT_NORMAL)
        ? Statement.of(
            Tone.OPEN,
            "Capability unknown",
            "The readings are not normal, and no other shape fits them.")
        : Statement.of(
            Tone.QUIET, "Capability unknown", "It needs at least two different readings.");
  }

  private Statement judged(Figure index) {
    String figure = figure(index);
    if (!inControl) {
      return Statement.of(Tone.OPEN, "Not proven", "The process is not in control. " + figure);
    }
    Double lower = index.lower();
    if (lower == null) {
      return Statement.of(
          Tone.OPEN, "Not proven", "There is no interval for the index that applies. " + figure);
    }
    return bounded(lower, upperOf(index), figure);
  }

  private static Statement bounded(double lower, double upper, String figure) {
    if (lower >= CAPABLE) {
      return Statement.of(Tone.GOOD, "Capable", figure);
    }
    if (upper < INCAPABLE) {
      return Statement.of(Tone.BAD, "Not capable", figure);
    }
    return upper < CAPABLE
        ? Statement.of(Tone.OPEN, "Below 1.33", figure)
        : Statement.of(
            Tone.OPEN,
            "Not proven",
            "It could be above or below 1.33; more readings narrow it. " + figure);
  }

  private static double upperOf(Figure index) {
    Double upper = index.upper();
    return upper == null ? Double.POSITIVE_INFINITY : upper;
  }

  private String figure(Figure index) {
    return index.kind().title()
        + " "
        + two(index.value())
        + interval(index)
        + ", "
        + Counted.of(summary.count(), "reading")
        + ".";
  }

  private static String interval(Figure index) {
    return index.lower() == null
        ? ""
        : " (" + two(index.lower()) + " to " + two(index.upper()) + ")";
  }

  private static String two(@Nullable Double value) {
    return value == null ? "open" : Decimals.fixed(value, 2);
  }

  private boolean has(Caution.Kind kind) {
    return summary.cautions().stream().anyMatch(each -> each.kind() == kind);
  }

  private Optional<Figure> known(FigureKind kind) {
    return summary.figure(kind).filter(figure -> figure.value() != null);
  }
}
