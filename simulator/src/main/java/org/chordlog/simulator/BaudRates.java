package org.chordlog.simulator;

import java.util.Map;

/** What {@code cfgetospeed} answers on Linux, as bit/s (asm-generic/termbits.h). */
final class BaudRates {
  private static final Map<Long, Integer> LINUX =
      Map.ofEntries(
          Map.entry(7L, 300),
          Map.entry(8L, 600),
          Map.entry(9L, 1200),
          Map.entry(11L, 2400),
          Map.entry(12L, 4800),
          Map.entry(13L, 9600),
          Map.entry(14L, 19200),
          Map.entry(15L, 38400),
          Map.entry(0x1001L, 57600),
          Map.entry(0x1002L, 115200),
          Map.entry(0x1003L, 230400),
          Map.entry(0x1004L, 460800),
          Map.entry(0x1005L, 500000),
          Map.entry(0x1006L, 576000),
          Map.entry(0x1007L, 921600),
          Map.entry(0x1008L, 1000000));

  private BaudRates() {}

  /** Systems other than Linux, and newer C libraries, answer the rate itself. */
  static int fromSystem(long speed) {
    Integer known = LINUX.get(speed);
    if (known != null) {
      return known;
    }
    return speed < 50 || (speed >= 0x1000 && speed < 0x1010) ? 0 : (int) speed;
  }
}
