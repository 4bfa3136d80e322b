package org.chordlog.stats;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.stats.math.Moments;

/**
 * Follows the places of each piece through its passes. Of several readings of a place in one pass
 * the last one counts; what a pass did is known where the place was measured before it, too.
 */
public final class PassTally {
  private final Map<Place, TreeMap<Integer, Double>> places = new LinkedHashMap<>();
  private final Map<Integer, Integer> passes = new LinkedHashMap<>();

  private record Place(int piece, String position) {}

  /** In the order of measurement; {@code pass} from 1. */
  public void add(int piece, String position, int pass, double radiusMm) {
    passes.merge(piece, pass, Math::max);
    places.computeIfAbsent(new Place(piece, position), any -> new TreeMap<>()).put(pass, radiusMm);
  }

  /** Of all that was added so far. */
  public PassSummary summary() {
    int rolledAgain = (int) passes.values().stream().filter(count -> count > 1).count();
    double mean = passes.values().stream().mapToInt(Integer::intValue).average().orElse(0);
    return new PassSummary(passes.size(), mean, rolledAgain, changes());
  }

  private List<PassSummary.Pass> changes() {
    Map<Integer, Moments> changes = new TreeMap<>();
    for (TreeMap<Integer, Double> radii : places.values()) {
      radii.forEach(
          (pass, radius) -> {
            Double before = radii.get(pass - 1);
            if (before != null) {
              changes.computeIfAbsent(pass, any -> new Moments()).add(radius - before);
            }
          });
    }
    return changes.entrySet().stream().map(each -> pass(each.getKey(), each.getValue())).toList();
  }

  private static PassSummary.Pass pass(int pass, Moments change) {
    return new PassSummary.Pass(
        pass, change.n(), change.mean(), change.n() > 1 ? (Double) change.deviation() : null);
  }
}
