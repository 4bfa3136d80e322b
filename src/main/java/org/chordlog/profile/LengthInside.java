package org.chordlog.profile;

import java.util.List;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Decision;
import org.jspecify.annotations.Nullable;

/**
 * A piece against its limits after ISO 14253-1: by its mean, everywhere, and as the specification
 * asks; the share of its evaluated length that is inside by more than the guard band, and the
 * longest stretch outside by more.
 */
public record LengthInside(
    Decision byMean,
    Decision everywhere,
    Decision decision,
    double shareInside,
    @Nullable Stretch longestOutside) {
  /** From one place to another, mm. */
  public record Stretch(double fromMm, double toMm) {}

  /**
   * Everywhere conforms when all windows do. It does not when two neighbouring ones are outside:
   * windows are a quarter span long, and what is shorter than half a span the bridge can't show.
   */
  static LengthInside of(
      Decision byMean, List<LocalRadius> places, double windowMm, DecideBy decideBy) {
    int inside = 0;
    int judged = 0;
    int run = 0;
    int longest = 0;
    int end = 0;
    for (int i = 0; i < places.size(); i++) {
      LocalRadius place = places.get(i);
      judged += place.marked() ? 0 : 1;
      inside += !place.marked() && place.decision() == Decision.CONFORMS ? 1 : 0;
      run = !place.marked() && place.decision() == Decision.DOES_NOT_CONFORM ? run + 1 : 0;
      if (run > longest) {
        longest = run;
        end = i;
      }
    }
    Decision everywhere = everywhere(byMean, inside, judged, longest);
    return new LengthInside(
        byMean,
        everywhere,
        decided(byMean, everywhere, decideBy),
        judged == 0 ? 0 : (double) inside / judged,
        longest == 0 ? null : stretch(places, end - longest + 1, end, windowMm));
  }

  private static Decision everywhere(Decision byMean, int inside, int judged, int longest) {
    if (byMean == Decision.NO_LIMITS) {
      return Decision.NO_LIMITS;
    }
    if (longest >= 2) {
      return Decision.DOES_NOT_CONFORM;
    }
    return inside == judged && judged > 0 ? Decision.CONFORMS : Decision.UNDECIDED;
  }

  private static Decision decided(Decision byMean, Decision everywhere, DecideBy decideBy) {
    return switch (decideBy) {
      case MEAN -> byMean;
      case EVERYWHERE -> everywhere;
      case BOTH -> worse(byMean, everywhere);
    };
  }

  private static Decision worse(Decision a, Decision b) {
    if (a == Decision.DOES_NOT_CONFORM || b == Decision.DOES_NOT_CONFORM) {
      return Decision.DOES_NOT_CONFORM;
    }
    return a == Decision.CONFORMS ? b : a;
  }

  private static Stretch stretch(List<LocalRadius> places, int first, int last, double windowMm) {
    return new Stretch(
        places.get(first).placeMm() - windowMm / 2, places.get(last).placeMm() + windowMm / 2);
  }
}
