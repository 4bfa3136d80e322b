package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.measure.Capital;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Spell;

/** Is the process in control since its last change? What came before is history. */
record ControlStatement(ControlVerdict verdict) {
  /** In control, not in control with the points that say so, or too early to tell. */
  Statement statement() {
    ControlState state = verdict.state();
    if (state instanceof ControlState.NotInControl not) {
      return new Statement(
          Tone.OPEN,
          "Not in control",
          sentence(not.spells()) + history(),
          "Find the cause, or say what it was.");
    }
    return state instanceof ControlState.TooFew few ? tooFew(few) : inControl(state.points());
  }

  private Statement tooFew(ControlState.TooFew few) {
    String reason =
        "%s of %s needed since the last change."
            .formatted(few.points(), Counted.of(few.needed(), "point"));
    return Statement.of(Tone.QUIET, "Too early to tell", reason + history());
  }

  private Statement inControl(long points) {
    boolean explained =
        verdict.history().stream()
            .anyMatch(each -> each.answered() && each.phase() == verdict.phase());
    String steady = explained ? "." : ", as steady as at the start.";
    return Statement.of(
        Tone.GOOD,
        "In control",
        Counted.of(points, "point") + " since the last change" + steady + history());
  }

  private static String sentence(List<Spell> spells) {
    String text = spells.stream().map(SpellWords::byPiece).collect(Collectors.joining("; "));
    return Capital.of(text) + ".";
  }

  /** Only what is over: earlier stretches of this phase, and those before the last change. */
  private String history() {
    long found = verdict.history().stream().filter(Spell::answered).count();
    long past = verdict.spellCount() - found;
    List<String> told = new ArrayList<>();
    if (found > 0) {
      told.add(stretches(found) + ", " + (found == 1 ? "its cause" : "their causes") + " found");
    }
    if (past > 0) {
      told.add(stretches(past) + ", now past");
    }
    return told.isEmpty() ? "" : " Earlier: " + String.join("; ", told) + ".";
  }

  private static String stretches(long count) {
    return count + (count == 1 ? " stretch" : " stretches") + " out of control";
  }
}
