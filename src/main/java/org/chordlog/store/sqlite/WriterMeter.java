package org.chordlog.store.sqlite;

import java.util.Arrays;
import java.util.concurrent.atomic.LongAdder;
import org.chordlog.store.StoreHealth;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Counts what the writer did and times its last commits; any thread. */
final class WriterMeter {
  private static final Logger LOG = LoggerFactory.getLogger(WriterMeter.class);
  private static final int KEPT = 512;

  private final LongAdder readings = new LongAdder();
  private final LongAdder samples = new LongAdder();
  private final LongAdder droppedReadings = new LongAdder();
  private final LongAdder droppedSamples = new LongAdder();
  private final long[] nanos = new long[KEPT];
  private long commits;
  private volatile String fault = "";
  private volatile long lastCommitMicros;

  void readingDropped() {
    droppedReadings.increment();
  }

  void samplesDropped(long count) {
    droppedSamples.add(count);
  }

  void failed(String sentence, Throwable cause) {
    if (!sentence.equals(fault)) {
      LOG.atError()
          .addKeyValue("fault", sentence)
          .setCause(cause)
          .log("the store does not take writes");
    }
    fault = sentence;
  }

  synchronized void committed(
      long readingCount, TraceWriter.Counts traces, long tookNanos, long nowMicros) {
    readings.add(readingCount);
    samples.add(traces.kept());
    droppedSamples.add(traces.refused());
    nanos[(int) (commits % KEPT)] = tookNanos;
    commits++;
    lastCommitMicros = nowMicros;
    if (!fault.isEmpty()) {
      LOG.atInfo().addKeyValue("was", fault).log("the store takes writes again");
      fault = "";
    }
  }

  String fault() {
    return fault;
  }

  long lastCommitMicros() {
    return lastCommitMicros;
  }

  StoreHealth.Counts counts() {
    return new StoreHealth.Counts(
        readings.sum(), droppedReadings.sum(), samples.sum(), droppedSamples.sum());
  }

  StoreHealth.Commits commits() {
    return new StoreHealth.Commits(lastCommitMicros, commitMillisP95());
  }

  /** 95th percentile of the last commits, ms; 0 before the first. */
  synchronized double commitMillisP95() {
    long[] sorted = Arrays.copyOf(nanos, (int) Math.min(commits, KEPT));
    Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : sorted[(int) ((sorted.length - 1) * 0.95)] / 1e6;
  }
}
