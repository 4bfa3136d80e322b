package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.math.Checkpointed;

/** Statistics with the newest reading, event, exclusion and withdrawal that they include. */
final class Running<S extends Checkpointed> {
  private static final int HEADER_BYTES = 5 * Long.BYTES;

  private final S statistics;
  private final PendingEvents pending = new PendingEvents();
  private long count;
  private long readingId;
  private long eventId;
  private long exclusionId;
  private long withdrawalId;

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

  long withdrawalId() {
    return withdrawalId;
  }

  /** Notes changes that concern readings to come. */
  void note(Changes changes) {
    pending.remove(changes.takenBack());
    pending.add(changes.events());
    eventId = Math.max(eventId, newest(changes.events(), JobEvent::id));
    exclusionId = Math.max(exclusionId, newest(changes.exclusions(), Exclusion::id));
    withdrawalId = Math.max(withdrawalId, newest(changes.withdrawals(), EventWithdrawal::id));
  }

  private static <T> long newest(List<T> changes, ToLongFunction<T> id) {
    return changes.isEmpty() ? 0 : id.applyAsLong(changes.get(changes.size() - 1));
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
        .putLong(withdrawalId)
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
    long withdrawalId = from.getLong();
    byte[] state = new byte[from.remaining()];
    from.get(state);
    Running<S> running = new Running<>(restore.apply(state));
    running.count = count;
    running.readingId = readingId;
    running.eventId = eventId;
    running.exclusionId = exclusionId;
    running.withdrawalId = withdrawalId;
    return running;
  }
}
