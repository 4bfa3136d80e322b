package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Sample;
import org.chordlog.store.Traces;

/**
 * Collects raw samples into blocks and hands each on within half a second. Used by the station's
 * thread alone; any thread may read what was dropped.
 */
final class TraceLog {
  static final int MOST_SAMPLES = 4_096;
  static final long MOST_NANOS = 500_000_000L;

  private final String station;
  private final Traces traces;
  private List<Sample> block = new ArrayList<>();
  private long firstNanos;
  private final IncidentLog incidents;
  private volatile long dropped;
  private long droppedNow;
  private long droppedFromMicros;

  TraceLog(String station, Traces traces, IncidentLog incidents) {
    this.station = station;
    this.traces = traces;
    this.incidents = incidents;
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

  void flush() {
    if (block.isEmpty()) {
      return;
    }
    long fromMicros = block.get(0).wallMicros();
    if (traces.append(station, block)) {
      tellDropped(fromMicros);
    } else {
      drop(fromMicros);
    }
    block = new ArrayList<>(block.size());
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // one writer
  private void drop(long fromMicros) {
    droppedFromMicros = droppedNow == 0 ? fromMicros : droppedFromMicros;
    droppedNow += block.size();
    dropped += block.size();
  }

  /** The store takes samples again: what it could not take becomes an incident. */
  private void tellDropped(long nowMicros) {
    if (droppedNow > 0) {
      Incident.Kind kind = Incident.Kind.SAMPLES_DROPPED;
      String detail = "The store could not take them.";
      incidents.add(
          new Incident(0, station, kind, droppedFromMicros, nowMicros, droppedNow, detail));
      droppedNow = 0;
    }
  }

  /** Samples that the store could not take. */
  long dropped() {
    return dropped;
  }
}
