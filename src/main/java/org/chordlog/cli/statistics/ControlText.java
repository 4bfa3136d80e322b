package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Spell;
import org.chordlog.verdict.SpellWords;

/** Whether a column is in control, for people and as JSON. */
final class ControlText {
  private ControlText() {}

  static List<String> lines(ControlVerdict control) {
    List<String> lines = new ArrayList<>();
    if (control.state() instanceof ControlState.TooFew few) {
      lines.add(
          "In control? Too few points to say: %s of %s.".formatted(few.points(), few.needed()));
    } else if (control.state() instanceof ControlState.NotInControl not) {
      not.spells()
          .forEach(spell -> lines.add("Not in control: " + SpellWords.byPoint(spell) + "."));
    } else {
      lines.add("In control: the newest points are as those before.");
    }
    control
        .history()
        .forEach(spell -> lines.add("Before that: " + SpellWords.byPoint(spell) + chance(spell)));
    return lines;
  }

  private static String chance(Spell spell) {
    return spell.chance() < Analysis.BEYOND_CHANCE ? "." : ", as may happen by chance.";
  }

  static Map<String, Object> json(ControlVerdict control) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("state", name(control.state()));
    json.put("points", control.state().points());
    json.put(
        "spells",
        control.state() instanceof ControlState.NotInControl not ? not.spells() : List.of());
    json.put("history", control.history());
    json.put("historyCount", control.spellCount());
    return json;
  }

  private static String name(ControlState state) {
    if (state instanceof ControlState.TooFew) {
      return "TOO_FEW";
    }
    return state instanceof ControlState.InControl ? "IN_CONTROL" : "NOT_IN_CONTROL";
  }
}
