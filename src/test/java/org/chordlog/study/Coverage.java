package org.chordlog.study;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/** How often the intervals of simulated studies hold the true figures. */
public final class Coverage {
  private Coverage() {}

  /** A design: a study from a seed, and the true value of each figure that is looked at. */
  public record Design(String name, LongFunction<StudyResult> study, Map<String, Double> truths) {}

  /** Counts of intervals below, around and above the truth. */
  public record Counts(int below, int around, int above) {
    Counts plus(@Nullable Double lower, @Nullable Double upper, double truth) {
      if (upper != null && upper < truth) {
        return new Counts(below + 1, around, above);
      }
      return lower != null && lower > truth
          ? new Counts(below, around, above + 1)
          : new Counts(below, around + 1, above);
    }

    public int studies() {
      return below + around + above;
    }

    public double percent() {
      return 100.0 * around / studies();
    }
  }

  public static Map<String, Counts> of(Design design, int studies, long firstSeed) {
    Map<String, Counts> counts = new LinkedHashMap<>();
    for (int i = 0; i < studies; i++) {
      StudyResult result = design.study().apply(firstSeed + i);
      design.truths().forEach((name, truth) -> count(counts, result, name, truth));
    }
    return counts;
  }

  private static void count(
      Map<String, Counts> counts, StudyResult result, String name, double truth) {
    StudyFigure figure = StudyData.figure(result.figures(), name);
    counts.merge(
        name,
        new Counts(0, 0, 0).plus(figure.lower(), figure.upper(), truth),
        (a, b) ->
            new Counts(a.below() + b.below(), a.around() + b.around(), a.above() + b.above()));
  }
}
