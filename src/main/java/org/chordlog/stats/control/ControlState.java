package org.chordlog.stats.control;

import java.util.List;

/** Whether a characteristic is in control since its last change; {@code points} judged so far. */
public sealed interface ControlState {
  /** Points since the last change. */
  long points();

  /** Nothing speaks against it, but {@code needed} points are wanted for saying so. */
  record TooFew(long points, long needed) implements ControlState {}

  /** The newest points are as those before. */
  record InControl(long points) implements ControlState {}

  /** They are not: one spell on the level, on the spread, or both; none of them answered. */
  record NotInControl(long points, List<Spell> spells) implements ControlState {
    public NotInControl {
      spells = List.copyOf(spells);
    }
  }
}
