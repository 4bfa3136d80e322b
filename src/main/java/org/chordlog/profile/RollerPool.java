package org.chordlog.profile;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The newest pieces of a machine, 25 at most, judged together from five on. One thread. */
public final class RollerPool {
  private static final int LEAST = 5;
  private static final int MOST = 25;

  private final double named;
  private final Deque<RippleScan> scans = new ArrayDeque<>();

  public RollerPool() {
    this(RollerSearch.PROBABILITY);
  }

  /** A roller is named below that probability. */
  public RollerPool(double named) {
    this.named = named;
  }

  /** A piece whose ripple can't be judged does not enter. */
  public void add(RippleScan scan) {
    if (scan.lines() == null) {
      return;
    }
    scans.addLast(scan);
    if (scans.size() > MOST) {
      scans.removeFirst();
    }
  }

  /** After rollers, bridge or set-up changed. */
  public void clear() {
    scans.clear();
  }

  /** Null before there are five. */
  public @Nullable RollerVerdict verdict() {
    return scans.size() < LEAST ? null : RollerSearch.verdict(List.copyOf(scans), named);
  }
}
