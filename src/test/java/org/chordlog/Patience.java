package org.chordlog;

import java.lang.management.ManagementFactory;
import java.lang.management.OperatingSystemMXBean;
import java.time.Duration;

/**
 * How long tests wait for what a quiet machine does in a second: 30 s, and in proportion longer
 * where more programs want to run than there are processors.
 */
public final class Patience {
  private static final Duration QUIET = Duration.ofSeconds(30);
  private static final double MOST_LOAD = 20;
  private static final OperatingSystemMXBean SYSTEM = ManagementFactory.getOperatingSystemMXBean();

  private Patience() {}

  /** As the machine is now. */
  public static Duration now() {
    return Duration.ofMillis(Math.round(QUIET.toMillis() * load()));
  }

  /** Asks for the load only once the shortest time is over. */
  static boolean isOver(Duration waited) {
    return waited.compareTo(QUIET) > 0 && waited.compareTo(now()) > 0;
  }

  /** Programs that run or want to, a processor, over the last minute: 1 (or unknown) to 20. */
  public static double load() {
    double load = SYSTEM.getSystemLoadAverage() / SYSTEM.getAvailableProcessors();
    return Math.min(MOST_LOAD, Math.max(1, load));
  }
}
