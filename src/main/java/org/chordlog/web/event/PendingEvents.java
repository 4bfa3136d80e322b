package org.chordlog.web.event;

import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The newest event of each kind and station that waits for one listener. What comes too soon after
 * the last one waits for the next, which goes out at once, so that what is shown is fresh; the last
 * one before a pause goes out {@value #PAUSE_NANOS} ns after its turn. Turns are counted from when
 * events came, not from when they were sent: one late event makes no later one late.
 */
final class PendingEvents {
  /** Stations speak each 100 ms, or a sample later. */
  static final long PAUSE_NANOS = 30_000_000;

  /**
   * Half the interval between two values of a station: tolerates jitter without skipping a value.
   */
  private static final long EARLY_NANOS = 50_000_000;

  private record Waiting(ServerEvent event, long cameNanos) {}

  private final Map<String, Waiting> waiting = new LinkedHashMap<>();
  private final Map<String, Long> lastCameNanos = new HashMap<>();
  private final long leastNanos;
  private final long earlyNanos;

  /** {@code leastNanos}: between two events of a kind and station, about. */
  PendingEvents(long leastNanos) {
    this.leastNanos = leastNanos;
    this.earlyNanos = Math.min(EARLY_NANOS, leastNanos / 2);
  }

  void offer(ServerEvent event, long nanos) {
    waiting.put(event.key(), new Waiting(event, nanos));
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  /** Moves what is due to {@code due}; whether there was anything. */
  boolean take(List<ServerEvent> due, long nowNanos) {
    boolean any = false;
    Iterator<Map.Entry<String, Waiting>> each = waiting.entrySet().iterator();
    while (each.hasNext()) {
      Map.Entry<String, Waiting> entry = each.next();
      Waiting next = entry.getValue();
      if (dueNanos(entry.getKey(), next) <= nowNanos) {
        due.add(next.event());
        lastCameNanos.put(entry.getKey(), next.cameNanos());
        each.remove();
        any = true;
      }
    }
    return any;
  }

  /** When the first of those that wait is due; {@code otherwise} when none waits. */
  long firstDueNanos(long otherwise) {
    return waiting.entrySet().stream()
        .mapToLong(entry -> dueNanos(entry.getKey(), entry.getValue()))
        .min()
        .orElse(otherwise);
  }

  private long dueNanos(String key, Waiting next) {
    @Nullable Long last = lastCameNanos.get(key);
    return last == null || next.cameNanos() - last >= leastNanos - earlyNanos
        ? next.cameNanos()
        : last + leastNanos + PAUSE_NANOS;
  }
}
