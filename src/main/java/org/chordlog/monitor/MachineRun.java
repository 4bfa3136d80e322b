package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.List;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.MachineStatistics;

/** A machine's statistics with the newest reading, event and exclusion that are in them. */
final class MachineRun implements Kept {
  private static final int HEADER_BYTES = 4 * Long.BYTES;

  private final MachineStatistics statistics;
  private final PendingEvents pending = new PendingEvents();
  private long count;
  private long readingId;
  private long eventId;
  private long exclusionId;

  MachineRun(MachineStatistics statistics) {
    this.statistics = statistics;
  }

  MachineStatistics statistics() {
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

  @Override
  public boolean settled() {
    return pending.isEmpty();
  }

  long eventId() {
    return eventId;
  }

  long exclusionId() {
    return exclusionId;
  }

  void note(List<JobEvent> events, long newestExclusion) {
    if (!events.isEmpty()) {
      pending.add(events);
      eventId = events.get(events.size() - 1).id();
    }
    exclusionId = newestExclusion;
  }

  void happenedUpTo(long afterReadingId) {
    pending.tell(afterReadingId, statistics::happened);
  }

  void wentOver(long id) {
    readingId = id;
    count++;
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

  static MachineRun unpack(byte[] packed) {
    ByteBuffer from = ByteBuffer.wrap(packed);
    long count = from.getLong();
    long readingId = from.getLong();
    long eventId = from.getLong();
    long exclusionId = from.getLong();
    byte[] state = new byte[from.remaining()];
    from.get(state);
    MachineRun run = new MachineRun(MachineStatistics.restore(state));
    run.count = count;
    run.readingId = readingId;
    run.eventId = eventId;
    run.exclusionId = exclusionId;
    return run;
  }
}
