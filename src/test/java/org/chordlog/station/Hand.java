package org.chordlog.station;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.EvenReads;
import org.chordlog.simulator.PseudoTerminal;

/** Moves the plunger of an indicator that sends 200 values a second without end. */
final class Hand implements AutoCloseable {
  private static final long PERIOD_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

  private final StationRig rig;
  private final String station;
  private final PseudoTerminal terminal;
  private final Thread indicator = new Thread(this::send, "indicator");
  private volatile double atMm = StationRig.FREE_AIR_MM;
  private volatile double shakeMm;
  private volatile double offsetMm;
  private volatile int sign = 1;
  private volatile boolean stopping;

  Hand(StationRig rig, String station, PseudoTerminal terminal) {
    this.rig = rig;
    this.station = station;
    this.terminal = terminal;
    indicator.start();
  }

  private void send() {
    try {
      for (int i = 0; !stopping; i++) {
        double shown = sign * (atMm + offsetMm + shakeMm * (i % 2));
        terminal.write(StationRig.line(shown));
        LockSupport.parkNanos(PERIOD_NANOS);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Holds it there until that many more values were read as they came. */
  void hold(double mm, int values) throws Exception {
    atMm = mm;
    EvenReads.await(() -> rig.stations.status(station).counts().samples(), values);
  }

  /** The indicator's own zero key moves what it shows. */
  void offset(double byMm) {
    offsetMm = byMm;
  }

  /** The indicator's direction key. */
  void reverse(boolean reversed) {
    sign = reversed ? -1 : 1;
  }

  /** From now on every other value is that much more. */
  void shake(double byMm) {
    shakeMm = byMm;
  }

  /** Stands on something out of free air, for longer than a zero needs, and stays there. */
  void standOn(double mm) throws Exception {
    hold(StationRig.FREE_AIR_MM, 30);
    hold(mm, 280);
  }

  /** From free air to rest on the piece, and back. */
  void touch(double mm) throws Exception {
    hold(StationRig.FREE_AIR_MM, 30);
    hold(mm, 60);
    hold(StationRig.FREE_AIR_MM, 30);
  }

  @Override
  public void close() {
    stopping = true;
    try {
      indicator.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
