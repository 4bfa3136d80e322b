package org.chordlog.stats.control;

import java.util.List;

/**
 * Whether a characteristic is in control now, in the phase numbered {@code phase}, and its earlier
 * spells out of control, oldest first: the newest {@value #KEPT} of {@code spellCount}, those
 * before the last change included (their phase is lower). A steady process of independent normal
 * values is called not in control in less than 5 % of looks, whenever one looks.
 */
public record ControlVerdict(ControlState state, int phase, List<Spell> history, long spellCount) {
  static final int KEPT = 20;

  public ControlVerdict {
    history = List.copyOf(history);
  }

  public boolean notInControl() {
    return state instanceof ControlState.NotInControl;
  }
}
