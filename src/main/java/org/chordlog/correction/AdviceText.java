package org.chordlog.correction;

import java.util.Locale;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Advice in the words of the shop. */
final class AdviceText {
  /**
   * A level below that share of its expanded uncertainty would be said as 0 mm too tight or open.
   */
  private static final double ON_TARGET = 0.05;

  /** For settings on a scale whose step is not known. */
  private static final double SETTING_STEP = 0.001;

  private static final char HARD_SPACE = '\u00a0';

  private AdviceText() {}

  static Sentence of(Advice.Correct advice) {
    Advice.Prospect prospect = advice.prospect();
    return Sentence.of(
        "%s %s: likely to help (%.0f %%). Pieces out of tolerance: now %s, then %s.",
        level("Level", advice.level()),
        move(advice),
        100 * prospect.chance(),
        percent(prospect.outBefore()),
        percent(prospect.outAfter()));
  }

  /** For example "Open by 0.03 mm, to 25.61." */
  static Sentence act(Advice.Correct advice) {
    Advice.Move move = advice.move();
    MachineScale scale = advice.scale();
    Double to = move.to();
    return Sentence.plain(
        verb(move.direction())
            + " by "
            + number(Math.abs(move.amount()), scale.step(), move.standardUncertainty())
            + unit(scale.unit())
            + (to == null ? "." : ", to " + setting(to, scale.step()) + "."));
  }

  /** For example "Tighten the radius by 4.2 mm." */
  static Sentence act(Advice.AmountUnknown advice) {
    return Double.isInfinite(advice.changeMm())
        ? Sentence.plain("Press in further.")
        : Sentence.of("%s the radius by %s.", verb(advice.direction()), change(advice));
  }

  /** Empty right after an event, when the next piece is measured in any case. */
  static Sentence act(Advice.TooEarly advice) {
    return advice.level() == null || advice.since() != Advice.Since.PIECE
        ? Sentence.EMPTY
        : Sentence.of("Don't correct yet: %s.", more(advice.morePieces()));
  }

  private static String verb(Advice.Direction direction) {
    return direction == Advice.Direction.TIGHTER ? "Tighten" : "Open";
  }

  private static String move(Advice.Correct advice) {
    Advice.Move move = advice.move();
    MachineScale scale = advice.scale();
    return String.format(
        Locale.ROOT,
        "%s by %s on the %s, %s",
        verb(move.direction()),
        amount(move, scale),
        scale.name(),
        target(move, scale));
  }

  private static String amount(Advice.Move move, MachineScale scale) {
    Double u = move.standardUncertainty();
    String text = number(Math.abs(move.amount()), scale.step(), u);
    String unit = unit(scale.unit());
    return u == null
        ? text + unit + " (± not known yet)"
        : text + unit + " (± " + number(2 * u, scale.step(), u) + ")";
  }

  /**
   * Behind a number: the unit as the machine shows it, never converted; one that begins with a
   * number itself, as 0.01 mm, is multiplied with. The spaces don't break.
   */
  static String unit(String unit) {
    return ((Character.isDigit(unit.charAt(0)) ? " × " : " ") + unit).replace(' ', HARD_SPACE);
  }

  private static String target(Advice.Move move, MachineScale scale) {
    Double from = move.from();
    Double to = move.to();
    if (from == null || to == null) {
      return move.amount() > 0 ? "to a higher number" : "to a lower number";
    }
    return "from " + setting(from, scale.step()) + " to " + setting(to, scale.step());
  }

  static Sentence of(Advice.Leave advice) {
    return level("Level", advice.level(), ": " + advice.reason().words() + ".");
  }

  static Sentence of(Advice.TooEarly advice) {
    LevelEstimate level = advice.level();
    if (level == null || advice.since() != Advice.Since.PIECE) {
      return Sentence.plain(advice.since().words());
    }
    String pieces = more(advice.morePieces());
    return level(
        "Looks", level, ": about " + pieces + " before a correction is better than chance.");
  }

  private static String more(int pieces) {
    return pieces == 1 ? "1 more piece" : pieces + " more pieces";
  }

  static Sentence of(Advice.AmountUnknown advice) {
    if (Double.isInfinite(advice.changeMm())) {
      return Sentence.plain(
          "The piece reads flat: press in further, and record the setting before and after."
              + " How far is known once a piece takes a bend.");
    }
    return Sentence.of(
        "%s the radius by %s (± %s). Record the setting before and after: the next advice will"
            + " say how far to move it.",
        verb(advice.direction()), change(advice), expanded(advice.standardUncertaintyMm()));
  }

  private static Quantity change(Advice.AmountUnknown advice) {
    return Quantity.of(advice.changeMm(), 2 * advice.standardUncertaintyMm());
  }

  /** The expanded uncertainty, k = 2, beside what it is of. */
  static Quantity expanded(double standardMm) {
    return Quantity.uncertainty(2 * standardMm).withoutUnit();
  }

  private static Sentence level(String verb, LevelEstimate level) {
    return level(verb, level, ".");
  }

  private static Sentence level(String verb, LevelEstimate level, String rest) {
    double expandedMm = 2 * level.standardUncertaintyMm();
    if (Math.abs(level.levelMm()) < ON_TARGET * expandedMm) {
      return Sentence.of("%s on target (± %s)%s", verb, Quantity.uncertainty(expandedMm), rest);
    }
    return Sentence.of(
        "%s %s too %s (± %s)%s",
        verb,
        Quantity.of(Math.abs(level.levelMm()), 2 * level.standardUncertaintyMm()),
        level.tight() ? "tight" : "wide",
        expanded(level.standardUncertaintyMm()),
        rest);
  }

  /** Whole percent; one decimal below one. */
  static String percent(double share) {
    if (share < 0.0005) {
      return "under 0.1 %";
    }
    return String.format(Locale.ROOT, share < 0.00995 ? "%.1f %%" : "%.0f %%", 100 * share);
  }

  /** As fine as the scale's step; without one, two digits of its standard uncertainty. */
  static String number(double value, double step, @Nullable Double uncertainty) {
    double finest = step > 0 ? step : uncertainty == null ? Math.abs(value) / 10 : uncertainty / 5;
    return String.format(Locale.ROOT, "%." + decimals(finest) + "f", value);
  }

  static String signed(double value, double step) {
    return (value > 0 ? "+" : "") + number(value, step, null);
  }

  /** A number to be set on the scale: to its step, and no longer than it is, as told elsewhere. */
  static String setting(double value, double step) {
    String rounded = number(value, step > 0 ? step : SETTING_STEP, null);
    return Decimals.setting(Double.parseDouble(rounded));
  }

  /** Fewest decimals that show a step, at most 6. */
  private static int decimals(double step) {
    for (int places = 0; places < 6; places++) {
      double scaled = step * Math.pow(10, places);
      if ((scaled >= 1 && Math.abs(scaled - Math.rint(scaled)) < 1e-6 * scaled) || scaled >= 10) {
        return places;
      }
    }
    return 6;
  }
}
