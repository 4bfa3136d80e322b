package org.chordlog.station;

import java.util.concurrent.locks.LockSupport;
import org.chordlog.link.Backoff;
import org.chordlog.link.Link;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkException.Reason;
import org.chordlog.link.LinkSettings;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Opens the link, reads it, and opens it again after a loss, until it is stopped. The thread that
 * runs it is the only one that opens and reads; in between it does what the mailbox holds.
 */
final class LinkLoop implements Runnable {
  private static final Logger LOG = LoggerFactory.getLogger(LinkLoop.class);
  private static final long LOOK_NANOS = 200_000_000L;
  private static final long BUSY_NANOS = 4_000_000L;

  /** What the loop tells; all on its own thread. */
  interface Events {
    void opened();

    void bytes(byte[] buffer, int count, long nanos);

    void nothing(long nanos);

    /** Also for an attempt that failed; {@code stoodNanos} is 0 then. */
    void lost(LinkException why, long stoodNanos);

    void stopped();

    /** What to send now, or null. */
    byte @Nullable [] request(long nanos);

    void footSwitch(boolean closed, long nanos);
  }

  private final LinkSettings settings;
  private final Backoff backoff;
  private final Mailbox mailbox;
  private final StationClock clock;
  private final long silenceNanos;
  private final boolean busy;
  private final Events events;
  private final byte[] buffer = new byte[16_384];
  private boolean delivered;
  private boolean ended;
  private volatile boolean stopping;
  private volatile @Nullable Link open;

  /** {@code busy}: looks every few milliseconds, for polled indicators and foot switches. */
  LinkLoop(
      LinkSettings settings,
      Backoff backoff,
      Mailbox mailbox,
      StationClock clock,
      long silenceNanos,
      boolean busy,
      Events events) {
    this.settings = settings;
    this.backoff = backoff;
    this.mailbox = mailbox;
    this.clock = clock;
    this.silenceNanos = silenceNanos;
    this.busy = busy;
    this.events = events;
  }

  @Override
  public void run() {
    try {
      while (!stopping) {
        if (ended) {
          mailbox.doWithin(LOOK_NANOS);
        } else {
          attempt();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      mailbox.close();
      events.stopped();
    }
  }

  private void attempt() throws InterruptedException {
    long openedNanos = clock.monotonicNanos();
    boolean opened = false;
    delivered = false;
    try (Link link = settings.open()) {
      open = link;
      opened = true;
      events.opened();
      read(link);
    } catch (LinkException e) {
      lost(e, opened ? clock.monotonicNanos() - openedNanos : 0);
    } catch (RuntimeException e) {
      LOG.atError()
          .addKeyValue("link", settings.target())
          .setCause(e)
          .log("the program has a fault");
      lost(faulty(e), opened ? clock.monotonicNanos() - openedNanos : 0);
    } finally {
      open = null;
    }
    if (!ended) {
      waitToRetry();
    }
  }

  private void lost(LinkException why, long stoodNanos) {
    if (!stopping) {
      backoff.stood(stoodNanos);
      ended = why.reason() == Reason.ENDED;
      events.lost(why, stoodNanos);
    }
  }

  /** The station goes on: it would be gone until the next start. */
  private LinkException faulty(RuntimeException e) {
    return new LinkException(
        Reason.LOST,
        "The program has a fault at what came from "
            + settings.target()
            + ": "
            + e
            + ". It opens it again; the log names the place.");
  }

  private void read(Link link) throws LinkException {
    long heardNanos = clock.monotonicNanos();
    while (!stopping) {
      mailbox.doWhatWaits();
      int count = busy ? poll(link) : link.read(buffer);
      long nanos = clock.monotonicNanos();
      if (count > 0) {
        heardNanos = nanos;
        delivered = true;
        events.bytes(buffer, count, nanos);
      } else {
        events.nothing(nanos);
        checkSilence(nanos - heardNanos);
      }
    }
  }

  private int poll(Link link) throws LinkException {
    long nanos = clock.monotonicNanos();
    events.footSwitch(link.footSwitchClosed(), nanos);
    byte @Nullable [] request = events.request(nanos);
    if (request != null) {
      link.write(request);
    }
    int count = link.readAvailable(buffer);
    if (count == 0) {
      LockSupport.parkNanos(BUSY_NANOS);
    }
    return count;
  }

  private void checkSilence(long silentNanos) throws LinkException {
    if (silenceNanos > 0 && silentNanos > silenceNanos) {
      throw new LinkException(
          Reason.SILENT,
          settings.target()
              + " has sent nothing for "
              + Math.max(1, Math.round(silentNanos / 1e9))
              + " s: is the indicator on, and set to send?");
    }
  }

  /** Until the back-off is over, or at once when a device that was not there comes back. */
  private void waitToRetry() throws InterruptedException {
    long until = clock.monotonicNanos() + (delivered ? backoff.shortest() : backoff.next());
    boolean wasThere = settings.present();
    while (!stopping && clock.monotonicNanos() < until) {
      mailbox.doWithin(LOOK_NANOS);
      boolean there = settings.present();
      if (there && !wasThere) {
        return;
      }
      wasThere = there;
    }
  }

  void stop() {
    stopping = true;
    mailbox.wake();
  }

  /** For a thread that does not stop by itself: frees a read or write that hangs. */
  void closeLink() {
    @Nullable Link link = open;
    if (link != null) {
      link.close();
    }
  }
}
