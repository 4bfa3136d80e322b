package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.function.Function;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.math.Checkpointed;

/** Statistics with the newest reading, event and exclusion that are in them. */
final class Running<S extends Checkpointed> {
  private static final int HEADER_BYTES = 4 * Long.BYTES;

  private final S statistics;
  private final PendingEvents pending = new PendingEvents();
  private long count;
  private long readingId;
  private long eventId;
  private long exclusionId;

  Running(S statistics) {
    this.statistics = statistics;
  }

  S statistics() {
    return statistics;
  }

  /** Readings processed. */
  long count() {
    return count;
  }

  long lastReadingId() {
    return readingId;
  }

  long eventId() {
    return eventId;
  }

  long exclusionId() {
    return exclusionId;
  }

  /** Whether no event waits for a later reading. */
  boolean settled() {
    return pending.isEmpty();
  }

  /** Notes changes that concern readings to come. */
  void note(List<JobEvent> events, List<Exclusion> exclusions) {
    if (!events.isEmpty()) {
      pending.add(events);
      eventId = Math.max(eventId, events.get(events.size() - 1).id());
    }
    if (!exclusions.isEmpty()) {
      exclusionId = exclusions.get(exclusions.size() - 1).id();
    }
  }

  /** Passes on the events that happened after readings up to that one. */
  void happenedUpTo(long afterReadingId) {
    pending.tell(afterReadingId, statistics::happened);
  }

  void processed(long id) {
    readingId = id;
    count++;
  }

  byte[] pack() {
    byte[] state = statistics.checkpoint();
    return ByteBuffer.allocate(HEADER_BYTES + state.length)
        .putLong(count)
        .putLong(readingId)
        .putLong(eventId)
        .putLong(exclusionId)
        .put(state)
        .array();
  }

  /** {@code restore} throws {@link org.chordlog.measure.BadInput} for a state that does not fit. */
  static <S extends Checkpointed> Running<S> unpack(byte[] packed, Function<byte[], S> restore) {
    ByteBuffer from = ByteBuffer.wrap(packed);
    long count = from.getLong();
    long readingId = from.getLong();
    long eventId = from.getLong();
    long exclusionId = from.getLong();
    byte[] state = new byte[from.remaining()];
    from.get(state);
    Running<S> running = new Running<>(restore.apply(state));
    running.count = count;
    running.readingId = readingId;
    running.eventId = eventId;
    running.exclusionId = exclusionId;
    return running;
  }
}
