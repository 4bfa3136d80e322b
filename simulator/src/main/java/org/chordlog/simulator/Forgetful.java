package org.chordlog.simulator;

import org.chordlog.measure.Check;

/** An operator who leaves every so many-th move of the rollers unrecorded. */
public final class Forgetful {
  private static final int MOST = 1_000_000;
  private final long every;
  private long moves;

  /** 1 leaves all moves unrecorded, 0 none. */
  public Forgetful(int every) {
    this.every = Check.within("unrecorded", (long) every, 0, MOST);
  }

  /** Whether the next move is recorded. */
  public boolean records() {
    moves++;
    return every == 0 || moves % every != 0;
  }
}
