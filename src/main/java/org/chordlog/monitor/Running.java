package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import java.util.zip.CRC32C;
import org.chordlog.measure.BadInput;
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
    byte[] packed = new byte[HEADER_BYTES + state.length + Long.BYTES];
    ByteBuffer to =
        ByteBuffer.wrap(packed)
            .putLong(count)
            .putLong(readingId)
            .putLong(eventId)
            .putLong(exclusionId)
            .putLong(withdrawalId)
            .put(state);
    to.putLong(sum(packed));
    return packed;
  }

  /** Of all but the sum itself at the end, so that a damaged state is noticed. */
  private static long sum(byte[] packed) {
    CRC32C sum = new CRC32C();
    sum.update(packed, 0, packed.length - Long.BYTES);
    return sum.getValue();
  }

  private static ByteBuffer checked(byte[] packed) {
    ByteBuffer from = ByteBuffer.wrap(packed);
    int length = packed.length - Long.BYTES;
    if (length < HEADER_BYTES || from.getLong(length) != sum(packed)) {
      throw new BadInput("checkpoint", "", "is damaged or older", "a state with its sum");
    }
    return from.limit(length);
  }

  /**
   * {@code restore} throws {@link BadInput} for a state that does not fit, this for a damaged one.
   */
  static <S extends Checkpointed> Running<S> unpack(byte[] packed, Function<byte[], S> restore) {
    ByteBuffer from = checked(packed);
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
