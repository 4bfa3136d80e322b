package org.chordlog.verdict;

import org.chordlog.measure.Sentence;

/**
 * What of the gauge may look like a move of the machine: what it measured then was in doubt, or
 * another bridge measured from then on.
 */
public enum GaugeBesideMachine {
  /** Nothing is known against it. */
  TRUSTED(""),
  CHECK_FAILED("The gauge that measured these pieces failed its check on a master."),
  ZERO_IN_DOUBT("The zero of the gauge was in doubt at these pieces."),
  OTHER_BRIDGE("Another bridge has measured the pieces since then.");

  private static final String FIRST =
      "First the gauge, not the rollers: calibrate it on a master and measure these pieces again."
          + " Correct nothing, and look for nothing at the machine, before that.";

  private final String why;

  GaugeBesideMachine(String why) {
    this.why = why;
  }

  public boolean trusted() {
    return this == TRUSTED;
  }

  /** The machine's move as it is to be said beside this: that it may be the gauge, and is first. */
  Statement of(Statement machine) {
    return trusted()
        ? machine
        : new Statement(
            machine.tone(),
            machine.word().replaceFirst("^Machine ", "Machine or gauge "),
            machine.reason().and(Sentence.plain(why)),
            Sentence.plain(FIRST));
  }
}
