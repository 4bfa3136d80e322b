package org.chordlog.verdict;

import org.chordlog.stats.control.PointRef;
import org.chordlog.stats.control.Signal;
import org.chordlog.stats.control.Spell;

/** A spell out of control, in words. */
public final class SpellWords {
  private SpellWords() {}

  /** By pieces: "pieces 41 to 58 are wider than those before". */
  public static String byPiece(Spell spell) {
    return of(spell, range("piece", spell.since().piece(), spell.newest().piece()));
  }

  /** By points of the chart: "points 41 to 58 are wider than those before". */
  public static String byPoint(Spell spell) {
    return of(spell, range("point", spell.since().number(), spell.newest().number()));
  }

  private static String range(String noun, long from, long to) {
    return from == to ? noun + " " + from : noun + "s " + from + " to " + to;
  }

  private static String of(Spell spell, String points) {
    boolean above = spell.side() == Signal.Side.ABOVE;
    boolean one = alone(spell.since(), spell.newest());
    return switch (spell.kind()) {
      case FAR_POINT -> points + (one ? " is" : " are") + far(above);
      case LEVEL -> points + (one ? " is " : " are ") + level(above) + " than those before";
      case SPREAD -> points + (one ? " scatters" : " scatter") + " more than those before";
    };
  }

  private static boolean alone(PointRef from, PointRef to) {
    return from.number() == to.number();
  }

  private static String far(boolean above) {
    return above ? " far above the others" : " far below the others";
  }

  private static String level(boolean above) {
    return above ? "higher" : "lower";
  }
}
