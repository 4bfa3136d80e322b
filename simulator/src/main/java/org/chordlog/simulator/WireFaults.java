package org.chordlog.simulator;

import java.io.ByteArrayOutputStream;
import java.util.Random;

/** What a bad line does to bytes. Shares are 0 to 1 of the bytes. */
final class WireFaults {
  private final Random random;
  private double noise;
  private double lost;
  private double doubled;

  WireFaults(long seed) {
    random = new Random(seed);
  }

  void noise(double share) {
    noise = share;
  }

  void lost(double share) {
    lost = share;
  }

  void doubled(double share) {
    doubled = share;
  }

  byte[] through(byte[] bytes) {
    if (noise == 0 && lost == 0 && doubled == 0) {
      return bytes;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + 4);
    for (byte b : bytes) {
      if (random.nextDouble() < lost) {
        continue;
      }
      int sent = random.nextDouble() < noise ? random.nextInt(256) : b;
      out.write(sent);
      if (random.nextDouble() < doubled) {
        out.write(sent);
      }
    }
    return out.toByteArray();
  }

  /** What a receiver at another rate makes of them. */
  byte[] garbled(byte[] bytes) {
    byte[] garbage = new byte[bytes.length];
    random.nextBytes(garbage);
    return garbage;
  }
}
