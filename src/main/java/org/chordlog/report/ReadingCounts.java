package org.chordlog.report;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Decision;

/** Counts of the readings that count, and of the pieces that they are of. */
public final class ReadingCounts {
  private final Map<Decision, Long> readings = new EnumMap<>(Decision.class);
  private final Set<Integer> pieces = new HashSet<>();
  private final Set<Integer> outside = new HashSet<>();
  private final Set<Integer> undecided = new HashSet<>();

  /** A reading of a product that is not excluded, against the limits in force. */
  public void add(int piece, Decision decision) {
    readings.merge(decision, 1L, Long::sum);
    pieces.add(piece);
    if (decision == Decision.DOES_NOT_CONFORM) {
      outside.add(piece);
    } else if (decision == Decision.UNDECIDED) {
      undecided.add(piece);
    }
  }

  long readings() {
    return readings.values().stream().mapToLong(Long::longValue).sum();
  }

  long readings(Decision decision) {
    return readings.getOrDefault(decision, 0L);
  }

  int pieces() {
    return pieces.size();
  }

  /** Pieces with a reading out of tolerance. */
  int piecesOutside() {
    return outside.size();
  }

  /** Their numbers, ascending. */
  List<Integer> outside() {
    return outside.stream().sorted().toList();
  }

  /** Pieces with an undecided reading and none out of tolerance. */
  int piecesUndecided() {
    return (int) undecided.stream().filter(piece -> !outside.contains(piece)).count();
  }
}
