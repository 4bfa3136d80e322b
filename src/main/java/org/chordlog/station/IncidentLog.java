package org.chordlog.station;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.Incident;
import org.chordlog.store.Incidents;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps incidents without holding up the station they happened to; bounded, the excess is logged.
 * Any thread may add; the thread "incidents" writes.
 */
final class IncidentLog implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(IncidentLog.class);
  private static final int MOST_WAITING = 1_024;
  private static final long STOP_MILLIS = 300;

  private final Incidents incidents;
  private final ThreadPoolExecutor writer;

  IncidentLog(Incidents incidents) {
    this.incidents = incidents;
    writer =
        new ThreadPoolExecutor(
            1, 1, 1, TimeUnit.SECONDS, new ArrayBlockingQueue<>(MOST_WAITING), IncidentLog::thread);
    writer.allowCoreThreadTimeOut(true);
    writer.setRejectedExecutionHandler((task, pool) -> LOG.warn("An incident was not stored"));
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "incidents");
    thread.setDaemon(true);
    return thread;
  }

  void add(Incident incident) {
    writer.execute(() -> keep(incident));
  }

  /** Does that on the incidents' thread, in turn; what fails is logged. */
  void run(Runnable work) {
    writer.execute(
        () -> {
          try {
            work.run();
          } catch (RuntimeException e) {
            LOG.warn("Not done: {}", e.getMessage());
          }
        });
  }

  private void keep(Incident incident) {
    try {
      var unused = incidents.add(incident);
    } catch (RuntimeException e) {
      LOG.warn("Not stored: {}: {}", incident, e.getMessage());
    }
  }

  /** Keeps what waits, for a short while at most. */
  @Override
  public void close() {
    writer.shutdown();
    try {
      if (!writer.awaitTermination(STOP_MILLIS, TimeUnit.MILLISECONDS)) {
        LOG.warn("{} incidents were not stored", writer.getQueue().size());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
