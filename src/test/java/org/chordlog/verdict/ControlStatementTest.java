package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.PointRef;
import org.chordlog.stats.control.Signal;
import org.chordlog.stats.control.Spell;
import org.junit.jupiter.api.Test;

/** What is said of a process whose stretches out of control are over or have their cause found. */
final class ControlStatementTest {
  private static final PointRef POINT = new PointRef(24, 120, 120, 0);

  private static Spell spell(int phase, boolean answered) {
    return new Spell(
        phase, Spell.Kind.LEVEL, Signal.Side.ABOVE, POINT, POINT, POINT, 9, 0.001, answered);
  }

  private static String said(Spell... history) {
    ControlState state = new ControlState.InControl(80);
    List<Spell> all = List.of(history);
    Statement said =
        new ControlStatement(new ControlVerdict(state, 2, all, all.size())).statement();
    return said.reason().toString();
  }

  @Test
  void aSteadyProcessIsAsAtTheStart() {
    assertEquals("80 points since the last change, as steady as at the start.", said());
  }

  @Test
  void whatIsOverIsToldApartFromWhatHasItsCauseFound() {
    assertEquals(
        "80 points since the last change, as steady as at the start. Earlier: 1 stretch out of"
            + " control, its cause found; 2 stretches out of control, now past.",
        said(spell(1, true), spell(1, false), spell(2, false)));
  }

  /** A level that is explained is another one than that of the start. */
  @Test
  void anExplainedStretchSinceTheLastChangeIsNotAsAtTheStart() {
    assertEquals(
        "80 points since the last change. Earlier: 1 stretch out of control, its cause found.",
        said(spell(2, true)));
  }
}
