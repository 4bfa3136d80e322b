package org.chordlog.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.chordlog.harness.ProcessFigures;

/**
 * What a process used at each look, and whether that stays flat: over the second half of the looks
 * the line of least squares through live heap and resident memory may rise by 5 % of their mean,
 * and two more threads or descriptors may be in use than in the first half (a request under way).
 */
final class Soak {
  private static final int FEWEST = 10;
  private static final double RISE = 0.05;
  private static final int UNDER_WAY = 2;

  private final List<ProcessFigures> looks = new ArrayList<>();

  void add(ProcessFigures now) {
    looks.add(now);
  }

  /** Nothing below {@value #FEWEST} looks: too short to tell. */
  void print() {
    if (looks.size() < FEWEST) {
      return;
    }
    List<Boolean> each =
        List.of(
            rises("live heap, MiB", ProcessFigures::heapMiB),
            rises("resident, MiB", ProcessFigures::residentMiB),
            more("threads", ProcessFigures::threads),
            more("descriptors", ProcessFigures::descriptors));
    String verdict = each.contains(false) ? "**GROWS**" : "flat";
    System.out.println("soak over " + looks.size() + " looks: " + verdict);
  }

  /** Whether that is flat. */
  private boolean rises(String what, ToDoubleFunction<ProcessFigures> figure) {
    double[] y = secondHalf().stream().mapToDouble(figure).toArray();
    double middle = (y.length - 1) / 2.0;
    double mean = 0;
    double slope = 0;
    double spread = 0;
    for (int i = 0; i < y.length; i++) {
      mean += y[i] / y.length;
      slope += (i - middle) * y[i];
      spread += (i - middle) * (i - middle);
    }
    double rise = slope / spread * (y.length - 1);
    boolean flat = rise <= RISE * mean;
    say(what, "mean %.1f, rise %+.1f over the second half".formatted(mean, rise), flat);
    return flat;
  }

  private boolean more(String what, ToDoubleFunction<ProcessFigures> figure) {
    double before = most(looks.subList(0, looks.size() / 2), figure);
    double after = most(secondHalf(), figure);
    boolean flat = after <= before + UNDER_WAY;
    say(what, "at most %.0f, then %.0f".formatted(before, after), flat);
    return flat;
  }

  private List<ProcessFigures> secondHalf() {
    return looks.subList(looks.size() / 2, looks.size());
  }

  private static double most(List<ProcessFigures> of, ToDoubleFunction<ProcessFigures> figure) {
    return of.stream().mapToDouble(figure).max().orElse(0);
  }

  private static void say(String what, String found, boolean flat) {
    System.out.printf(Locale.ROOT, "   %s: %s: %s%n", what, found, flat ? "flat" : "GROWS");
  }
}
