package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Sample;
import org.chordlog.store.Traces;

/** Collects raw samples into blocks and hands each on within half a second. */
final class TraceLog {
  static final int MOST_SAMPLES = 4_096;
  static final long MOST_NANOS = 500_000_000L;

  private final String station;
  private final Traces traces;
  private List<Sample> block = new ArrayList<>();
  private long firstNanos;
  private volatile long dropped;

  TraceLog(String station, Traces traces) {
    this.station = station;
    this.traces = traces;
  }

  void add(Sample sample, long nowNanos) {
    if (block.isEmpty()) {
      firstNanos = nowNanos;
    }
    block.add(sample);
    if (block.size() >= MOST_SAMPLES) {
      flush();
    }
  }

  void flushIfDue(long nowNanos) {
    if (!block.isEmpty() && nowNanos - firstNanos >= MOST_NANOS) {
      flush();
    }
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // one writer
  void flush() {
    if (block.isEmpty()) {
      return;
    }
    if (!traces.append(station, block)) {
      dropped += block.size();
    }
    block = new ArrayList<>(block.size());
  }

  /** Samples that the store could not take. */
  long dropped() {
    return dropped;
  }
}
