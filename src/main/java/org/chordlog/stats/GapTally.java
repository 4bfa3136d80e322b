package org.chordlog.stats;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Where each piece was measured, against the positions that were planned. */
public final class GapTally {
  private final List<String> planned;

  /** Of each piece and position, whether a reading counts. */
  private final Map<Integer, Map<String, Boolean>> pieces = new TreeMap<>();

  private int newest;

  public GapTally(List<String> planned) {
    this.planned = List.copyOf(planned);
  }

  /** In the order of measurement; {@code counts} is false of an excluded reading. */
  public void add(int piece, String position, boolean counts) {
    pieces
        .computeIfAbsent(piece, any -> new HashMap<>())
        .merge(position, counts, Boolean::logicalOr);
    newest = piece;
  }

  /** Pieces with a reading, excluded or not. */
  public int pieces() {
    return pieces.size();
  }

  /** Of all pieces, by their numbers. */
  public List<PieceGap> gaps() {
    return pieces.keySet().stream().flatMap(piece -> gap(piece).stream()).toList();
  }

  /** Without the newest piece, which may still be at the gauge. */
  public List<PieceGap> gapsBeforeNewest() {
    return gaps().stream().filter(each -> each.piece() != newest).toList();
  }

  /** Of the piece measured last. */
  public Optional<PieceGap> newestGap() {
    return pieces.isEmpty() ? Optional.empty() : gap(newest);
  }

  private Optional<PieceGap> gap(int piece) {
    Map<String, Boolean> at = pieces.getOrDefault(piece, Map.of());
    List<String> never = planned.stream().filter(each -> !at.containsKey(each)).toList();
    List<String> excluded =
        planned.stream().filter(each -> at.containsKey(each) && !at.get(each)).toList();
    boolean counts = at.containsValue(true);
    return counts && never.isEmpty() && excluded.isEmpty()
        ? Optional.empty()
        : Optional.of(new PieceGap(piece, counts, never, excluded));
  }
}
