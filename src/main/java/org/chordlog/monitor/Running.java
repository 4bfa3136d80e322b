package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.List;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.Observation;
import org.chordlog.stats.StatisticsPlan;
import org.jspecify.annotations.Nullable;

/** Statistics with the newest reading, event and exclusion that are in them. */
final class Running implements Kept {
  private static final int HEADER_BYTES = 4 * Long.BYTES;

  private final JobStatistics statistics;
  private final PendingEvents pending = new PendingEvents();
  private long count;
  private long readingId;
  private long eventId;
  private long exclusionId;

  Running(JobStatistics statistics) {
    this.statistics = statistics;
  }

  JobStatistics statistics() {
    return statistics;
  }

  @Override
  public long count() {
    return count;
  }

  @Override
  public long lastReadingId() {
    return readingId;
  }

  long eventId() {
    return eventId;
  }

  long exclusionId() {
    return exclusionId;
  }

  Standing standing(long behind) {
    return new Standing(
        count, readingId, eventId, exclusionId, statistics.plan().toString().hashCode(), behind);
  }

  /** Takes note of changes that lie after the last reading. */
  void note(List<JobEvent> events, List<Exclusion> exclusions) {
    if (!events.isEmpty()) {
      pending.add(events);
      eventId = Math.max(eventId, events.get(events.size() - 1).id());
    }
    for (Exclusion each : exclusions) {
      statistics.exclude(each.readingId(), each.excluded() ? each.reason() : "");
      exclusionId = each.id();
    }
  }

  /** Tells of the events after a reading up to that one. */
  void happenedUpTo(long afterReadingId) {
    pending.tell(afterReadingId, statistics::happened);
  }

  /** A reading without a radius (a flat) is gone over only. */
  void take(long id, @Nullable Observation observation) {
    if (observation != null) {
      statistics.add(observation);
    }
    readingId = id;
    count++;
  }

  @Override
  public boolean settled() {
    return pending.isEmpty();
  }

  @Override
  public byte[] pack() {
    byte[] state = statistics.checkpoint();
    return ByteBuffer.allocate(HEADER_BYTES + state.length)
        .putLong(count)
        .putLong(readingId)
        .putLong(eventId)
        .putLong(exclusionId)
        .put(state)
        .array();
  }

  /** Throws {@link org.chordlog.measure.BadInput} for a state of another plan or version. */
  static Running unpack(StatisticsPlan plan, byte[] packed) {
    ByteBuffer from = ByteBuffer.wrap(packed);
    long count = from.getLong();
    long readingId = from.getLong();
    long eventId = from.getLong();
    long exclusionId = from.getLong();
    byte[] state = new byte[from.remaining()];
    from.get(state);
    Running running = new Running(JobStatistics.restore(plan, state));
    running.count = count;
    running.readingId = readingId;
    running.eventId = eventId;
    running.exclusionId = exclusionId;
    return running;
  }
}
