package org.chordlog.stats.math;

import java.util.Arrays;

/** The newest {@value #SIZE} values, in order: all of a normal job, the tail of an endless one. */
public final class Window {
  public static final int SIZE = 2000;
  private double[] ring = new double[64];
  private long n;

  /** Takes in the next value; the oldest leaves a full window. */
  public void add(double value) {
    int at = (int) (n++ % SIZE);
    if (at >= ring.length) {
      ring = Arrays.copyOf(ring, Math.min(SIZE, Math.max(2 * ring.length, at + 1)));
    }
    ring[at] = value;
  }

  /** Whether no value has left it yet. */
  public boolean complete() {
    return n <= SIZE;
  }

  /** Oldest first. */
  public double[] values() {
    if (complete()) {
      return Arrays.copyOf(ring, (int) n);
    }
    int at = (int) (n % SIZE);
    double[] values = new double[SIZE];
    System.arraycopy(ring, at, values, 0, SIZE - at);
    System.arraycopy(ring, 0, values, SIZE - at, at);
    return values;
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(n);
    for (double value : values()) {
      packer.put(value);
    }
  }

  /** Reads the state that was written. */
  public static Window unpack(Unpacker from) {
    Window window = new Window();
    long n = from.aLong();
    window.n = Math.max(0, n - SIZE);
    while (window.n < n) {
      window.add(from.aDouble());
    }
    return window;
  }
}
