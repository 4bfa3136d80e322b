package org.chordlog.decode;

import java.util.List;

/** Seven-bit streams seen through eight bits. */
final class Stream7 {
  private Stream7() {}

  /** Whether enough bytes have bit 8 set to be parity. */
  static boolean worthMasking(List<Arrival> stream) {
    long all = 0;
    long high = 0;
    for (Arrival arrival : stream) {
      for (byte b : arrival.bytes()) {
        all++;
        high += b < 0 ? 1 : 0;
      }
    }
    return high * 5 > all;
  }

  static List<Arrival> masked(List<Arrival> stream) {
    return stream.stream()
        .map(arrival -> new Arrival(arrival.monotonicNanos(), masked(arrival.bytes())))
        .toList();
  }

  static byte[] masked(byte[] bytes) {
    byte[] masked = bytes.clone();
    for (int i = 0; i < masked.length; i++) {
      masked[i] &= 0x7F;
    }
    return masked;
  }
}
