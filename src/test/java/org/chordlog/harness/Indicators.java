package org.chordlog.harness;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.PseudoTerminal;

/**
 * Many indicators on pseudo-terminals, all sent by one thread: the plunger hangs in free air, then
 * rests on a piece, and so on. In free air each frame has a value of its own, so that a listener
 * can tell which frame it sees.
 */
public final class Indicators implements AutoCloseable {
  private static final int REMEMBERED = 1 << 14;
  private static final long AIR_VALUES = 1_000;
  private static final int LATE_KEPT = 1 << 18;
  private static final int[] DIGITS = {6, 5, 4, 2, 1};

  private final PseudoTerminal[] terminals;
  private final long[][] sentNanos;
  private final long[] sent;
  private final int airFrames;
  private final int cycleFrames;
  private final long periodNanos;
  private final Random random = new Random(7);
  private final long[] restMicrons;
  private final Thread sender = new Thread(this::send, "indicators");
  private final long[] late = new long[LATE_KEPT];
  private long lateCount;
  private volatile boolean stopped;
  private volatile boolean inAirOnly;
  private volatile long lost;

  /** A reading is to be had every {@code cycleFrames} frames. */
  public Indicators(Rig rig, int count, double perSecond, int airFrames, int cycleFrames)
      throws IOException {
    this.airFrames = airFrames;
    this.cycleFrames = cycleFrames;
    periodNanos = Math.round(1e9 / perSecond);
    terminals = new PseudoTerminal[count];
    sentNanos = new long[count][REMEMBERED];
    sent = new long[count];
    restMicrons = new long[count];
    for (int i = 0; i < count; i++) {
      terminals[i] = PseudoTerminal.open();
      terminals[i].publish(rig.link(i));
    }
  }

  public void start() {
    sender.setDaemon(true);
    sender.start();
  }

  /** From now on no piece is measured. */
  public void restInAir(boolean now) {
    inAirOnly = now;
  }

  /** Frames that the device did not take whole while somebody had it open. */
  public long lost() {
    return lost;
  }

  /** Frames taken by the device of a station so far. */
  public synchronized long sent(int station) {
    return sent[station];
  }

  /** When the frame with that number (from 1) was handed over; 0 when it is forgotten. */
  public synchronized long sentNanos(int station, long frame) {
    return frame > sent[station] - REMEMBERED && frame <= sent[station]
        ? sentNanos[station][(int) (frame % REMEMBERED)]
        : 0;
  }

  /** The newest frame in free air that showed that many microns; 0 when there is none. */
  public synchronized long frameInAir(int station, long microns) {
    long offset = -6_000 - microns;
    long newest = sent[station];
    long frame = newest - Math.floorMod(newest - offset, AIR_VALUES);
    return offset >= 0 && offset < AIR_VALUES ? frame : 0;
  }

  /** How late the newest frames were handed over, ns: the wake-up of this program itself. */
  public synchronized long[] lateness() {
    return Arrays.copyOf(late, (int) Math.min(lateCount, LATE_KEPT));
  }

  /** Forgets how late frames were. */
  public synchronized void forgetLateness() {
    lateCount = 0;
  }

  private void send() {
    long start = System.nanoTime();
    try {
      for (long tick = 0; !stopped; tick++) {
        for (int i = 0; i < terminals.length; i++) {
          // Spread over the period, as stations that know nothing of each other are.
          long due = start + tick * periodNanos + i * periodNanos / terminals.length;
          await(due);
          frame(i, tick, due);
        }
      }
    } catch (IOException e) {
      if (!stopped) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static void await(long due) {
    long left = due - System.nanoTime();
    while (left > 0) {
      LockSupport.parkNanos(left);
      left = due - System.nanoTime();
    }
  }

  private void frame(int i, long tick, long due) throws IOException {
    long phase = (tick + i * 37L) % cycleFrames;
    byte[] frame = text(microns(i, phase));
    long nanos = System.nanoTime();
    synchronized (this) {
      late[(int) (lateCount++ % LATE_KEPT)] = nanos - due;
      sentNanos[i][(int) ((sent[i] + 1) % REMEMBERED)] = nanos;
      int taken = terminals[i].write(frame);
      if (taken == frame.length) {
        sent[i]++;
      } else if (terminals[i].connected()) {
        lost++;
      }
    }
  }

  /** Such as {@code +02.778} CR LF; cheaper than a formatter at thousands a second. */
  private static byte[] text(long microns) {
    byte[] text = "+00.000\r\n".getBytes(US_ASCII);
    text[0] = (byte) (microns < 0 ? '-' : '+');
    long left = Math.abs(microns);
    for (int at : DIGITS) {
      text[at] = (byte) ('0' + left % 10);
      left /= 10;
    }
    return text;
  }

  private long microns(int i, long phase) {
    if (inAirOnly || phase < airFrames) {
      return -6_000 - (sent[i] + 1) % AIR_VALUES;
    }
    if (phase == airFrames) {
      restMicrons[i] = Math.round(2_778 + random.nextGaussian() * 4);
    }
    return restMicrons[i] + random.nextInt(2);
  }

  @Override
  public void close() {
    stopped = true;
    try {
      sender.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    for (PseudoTerminal each : terminals) {
      each.close();
    }
  }
}
