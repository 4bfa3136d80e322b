package org.chordlog;

import java.util.function.LongSupplier;

/**
 * Waits in tests until values were read as they came, one after the other. A lump of them that had
 * waited while nobody read has one time, in which nothing rests: after one it is counted anew.
 */
public final class EvenReads {
  private static final int LUMP = 20;
  private final LongSupplier samples;
  private long last;
  private long since;

  private EvenReads(LongSupplier samples) {
    this.samples = samples;
    last = samples.getAsLong();
    since = last;
  }

  /** {@code samples} counts what was read so far. */
  public static void await(LongSupplier samples, int values) throws Exception {
    EvenReads reads = new EvenReads(samples);
    Await.closely(() -> reads.evenly() >= values);
  }

  private long evenly() {
    long now = samples.getAsLong();
    if (now - last > LUMP) {
      since = now;
    }
    last = now;
    return now - since;
  }
}
