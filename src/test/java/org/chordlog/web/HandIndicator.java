package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.PseudoTerminal;

/** An indicator on a pseudo-terminal whose plunger a hand moves; what it sends is told to it. */
final class HandIndicator implements AutoCloseable {
  static final double OUT_MM = -3;
  static final double IN_MM = 4.321;
  private static final double SWINGS_HZ = 0.4;
  private static final double PUSH_SECONDS = 0.5;
  private static final long LOOK_NANOS = 8_000_000;

  /** What is sent for a position; {@code asked} is what came since, for those that answer. */
  interface Form {
    byte[] of(double mm, byte[] asked);
  }

  private final PseudoTerminal terminal;
  private final Form form;
  private final long everyMillis;
  private volatile boolean closed;
  private volatile boolean swinging = true;
  private volatile long pushedNanos = Long.MAX_VALUE;

  /** Sends each so many milliseconds; 0: only answers. */
  HandIndicator(long everyMillis, Form form) throws IOException {
    this.form = form;
    this.everyMillis = everyMillis;
    terminal = PseudoTerminal.open();
    Thread thread = new Thread(this::run, "hand indicator");
    thread.setDaemon(true);
    thread.start();
  }

  String port() {
    return terminal.path().toString();
  }

  /** Held where it is pushed in. */
  void hold() {
    pushedNanos = 0;
    swinging = false;
  }

  /** Pushed in and let out again, slowly and for ever. */
  void swing() {
    swinging = true;
  }

  void letOut() {
    pushedNanos = Long.MAX_VALUE;
    swinging = false;
  }

  /** Pushed in from out, a second from now. */
  void push() {
    pushedNanos = System.nanoTime() + TimeUnit.SECONDS.toNanos(1);
    swinging = false;
  }

  private double positionMm() {
    long now = System.nanoTime();
    if (swinging) {
      return (OUT_MM + IN_MM) / 2
          + (IN_MM - OUT_MM) / 2 * Math.sin(2 * Math.PI * SWINGS_HZ * now / 1e9);
    }
    double pushed = Math.max(0, Math.min(1, (now - pushedNanos) / 1e9 / PUSH_SECONDS));
    return pushedNanos > now ? OUT_MM : OUT_MM + (IN_MM - OUT_MM) * pushed;
  }

  private void run() {
    byte[] buffer = new byte[256];
    long sent = 0;
    while (!closed) {
      try {
        int count = Math.max(0, terminal.read(buffer));
        boolean due = everyMillis > 0 && System.nanoTime() - sent > everyMillis * 1_000_000;
        if (due || (everyMillis == 0 && count > 0)) {
          terminal.write(form.of(positionMm(), Arrays.copyOf(buffer, count)));
          sent = System.nanoTime();
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  @Override
  public void close() {
    closed = true;
    terminal.close();
  }
}
