package org.chordlog.station;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;
import org.chordlog.measure.Reading;
import org.chordlog.store.PieceMove;

/**
 * In place of a reading that was moved to another job the one there; others, and those of a move
 * that the store did not take, as they are.
 */
final class WhereMoved implements UnaryOperator<CompletableFuture<Reading>> {
  private final Map<Long, CompletableFuture<Reading>> there = new HashMap<>();

  WhereMoved(PieceMove move, CompletableFuture<List<Reading>> kept) {
    for (PieceMove.Moved each : move.readings()) {
      int index = there.size();
      there.put(
          each.from().id(),
          kept.handle((all, failure) -> failure == null ? all.get(index) : each.from()));
    }
  }

  /** One that is not committed, or was lost, was not moved. */
  @Override
  public CompletableFuture<Reading> apply(CompletableFuture<Reading> given) {
    boolean known = given.isDone() && !given.isCompletedExceptionally();
    return known ? there.getOrDefault(given.join().id(), given) : given;
  }
}
