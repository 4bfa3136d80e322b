package org.chordlog.report;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Exclusion;
import org.chordlog.stats.GapTally;
import org.chordlog.stats.PieceGap;

/** Counts of a job's readings, of those that do not count, and of the pieces that they are of. */
public final class ReadingCounts {
  private final GapTally positions;
  private final Map<Decision, Long> readings = new EnumMap<>(Decision.class);
  private final Map<String, Long> reasons = new LinkedHashMap<>();
  private final Set<String> lots = new LinkedHashSet<>();
  private final Set<Integer> outside = new HashSet<>();
  private final Set<Integer> undecided = new HashSet<>();
  private boolean goesOn;

  /** Of pieces that are to be measured at those positions. */
  public ReadingCounts(List<String> planned) {
    positions = new GapTally(planned);
  }

  /** A reading of a product that counts, against the limits in force. */
  public void add(int piece, String position, Decision decision) {
    positions.add(piece, position, true);
    readings.merge(decision, 1L, Long::sum);
    if (decision == Decision.DOES_NOT_CONFORM) {
      outside.add(piece);
    } else if (decision == Decision.UNDECIDED) {
      undecided.add(piece);
    }
  }

  /** Of a reading that counts; empty where none is named. */
  public void addLot(String lot) {
    if (!lot.isEmpty()) {
      lots.add(lot);
    }
  }

  /** Of the readings that count, in the order in which they were measured. */
  public List<String> lots() {
    return List.copyOf(lots);
  }

  /** A reading of a product that was excluded for that reason; a moved one is of another job's. */
  public void addExcluded(int piece, String position, String reason) {
    if (!Exclusion.moved(reason)) {
      positions.add(piece, position, false);
    }
    reasons.merge(Exclusion.ofAllMoved(reason), 1L, Long::sum);
  }

  /** The newest piece may get more readings: nothing is missing at it yet. */
  public void goesOn() {
    goesOn = true;
  }

  /** Those that count. */
  long readings() {
    return readings.values().stream().mapToLong(Long::longValue).sum();
  }

  long readings(Decision decision) {
    return readings.getOrDefault(decision, 0L);
  }

  long excluded() {
    return reasons.values().stream().mapToLong(Long::longValue).sum();
  }

  /**
   * How many were excluded for each reason, in the order in which they were measured; those moved
   * to one job have one reason.
   */
  Map<String, Long> reasons() {
    return reasons;
  }

  /** Those with a reading, excluded or not. */
  int pieces() {
    return positions.pieces();
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

  /** Pieces all of whose readings were excluded, ascending. */
  List<Integer> without() {
    return positions.gaps().stream().filter(each -> !each.counts()).map(PieceGap::piece).toList();
  }

  /** Pieces with a reading that counts, but not at each planned position. */
  List<PieceGap> gaps() {
    return (goesOn ? positions.gapsBeforeNewest() : positions.gaps())
        .stream().filter(PieceGap::counts).toList();
  }

  /** What the newest piece lacks so far, where it may get more readings. */
  Optional<PieceGap> unfinished() {
    return goesOn ? positions.newestGap().filter(PieceGap::counts) : Optional.empty();
  }
}
