package org.chordlog.bench;

import java.io.IOException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.harness.EventNotes;
import org.chordlog.harness.ServiceProcess;

/**
 * What an open page asks for: the events of its station, and after each reading the statistics and
 * the chart of its job.
 */
final class Dashboard implements AutoCloseable {
  private final ServiceProcess service;
  private final long jobId;
  private final EventNotes events;
  private final Semaphore due = new Semaphore(0);
  private final Thread looker = new Thread(this::look, "dashboard");
  private final AtomicLong looks = new AtomicLong();
  private volatile boolean closed;

  Dashboard(ServiceProcess service, String station, long jobId) throws IOException {
    this.service = service;
    this.jobId = jobId;
    events = EventNotes.listen(service.address(), "?station=" + station, this::hear);
    looker.setDaemon(true);
    looker.start();
  }

  long looks() {
    return looks.get();
  }

  private void hear(EventNotes.Event event) {
    if (event.name().equals("statistics")) {
      due.release();
    }
  }

  private void look() {
    try {
      while (!closed) {
        due.acquire();
        due.drainPermits();
        service.body("/api/jobs/" + jobId + "/statistics");
        service.body("/api/jobs/" + jobId + "/charts/INDIVIDUALS?width=1000&height=560");
        looks.incrementAndGet();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException e) {
      if (!closed) {
        System.out.println("a dashboard failed: " + e);
      }
    }
  }

  @Override
  public void close() {
    closed = true;
    events.close();
    looker.interrupt();
  }
}
