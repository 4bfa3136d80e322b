package org.chordlog.correction;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Advice in the words of the shop. */
final class AdviceText {
  /** For settings on a scale whose step is not known. */
  private static final double SETTING_STEP = 0.001;

  private static final char HARD_SPACE = '\u00a0';

  private AdviceText() {}

  static String of(Advice.Correct advice) {
    Advice.Prospect prospect = advice.prospect();
    return String.format(
        Locale.ROOT,
        "%s %s: likely to help (%.0f %%). Pieces out of tolerance: now %s, then %s.",
        level("Level", advice.level()),
        move(advice),
        100 * prospect.chance(),
        percent(prospect.outBefore()),
        percent(prospect.outAfter()));
  }

  /** For example "Open by 0.03 mm, to 25.61." */
  static String act(Advice.Correct advice) {
    Advice.Move move = advice.move();
    MachineScale scale = advice.scale();
    Double to = move.to();
    return verb(move.direction())
        + " by "
        + number(Math.abs(move.amount()), scale.step(), move.standardUncertainty())
        + unit(scale.unit())
        + (to == null ? "." : ", to " + setting(to, scale.step()) + ".");
  }

  /** For example "Tighten the radius by 4.2 mm." */
  static String act(Advice.AmountUnknown advice) {
    return Double.isInfinite(advice.changeMm())
        ? "Press in further."
        : String.format(
            Locale.ROOT, "%s the radius by %.1f mm.", verb(advice.direction()), advice.changeMm());
  }

  /** Empty right after an event, when the next piece is measured in any case. */
  static String act(Advice.TooEarly advice) {
    if (advice.level() == null || advice.since() != Advice.Since.PIECE) {
      return "";
    }
    return advice.morePieces() == 1
        ? "Don't correct yet: 1 more piece."
        : "Don't correct yet: " + advice.morePieces() + " more pieces.";
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
   * Behind a number; a unit that begins with a number itself, as 0.01 mm, is multiplied with. The
   * spaces don't break: that tells the machine's unit from a length in mm, which a page may
   * convert.
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

  static String of(Advice.Leave advice) {
    return level("Level", advice.level(), ": " + advice.reason().words() + ".");
  }

  static String of(Advice.TooEarly advice) {
    LevelEstimate level = advice.level();
    if (level == null || advice.since() != Advice.Since.PIECE) {
      return advice.since().words();
    }
    String pieces =
        advice.morePieces() == 1 ? "1 more piece" : advice.morePieces() + " more pieces";
    return level(
        "Looks", level, ": about " + pieces + " before a correction is better than chance.");
  }

  static String of(Advice.AmountUnknown advice) {
    if (Double.isInfinite(advice.changeMm())) {
      return "The piece reads flat: press in further, and record the setting before and after."
          + " How far is known once a piece takes a bend.";
    }
    return String.format(
        Locale.ROOT,
        "%s the radius by %.1f mm (± %.1f). Record the setting before and after: the next advice"
            + " will name an amount.",
        verb(advice.direction()),
        advice.changeMm(),
        2 * advice.standardUncertaintyMm());
  }

  private static String level(String verb, LevelEstimate level) {
    return level(verb, level, ".");
  }

  private static String level(String verb, LevelEstimate level, String rest) {
    return String.format(
        Locale.ROOT,
        "%s %.1f mm too %s (± %.1f)%s",
        verb,
        Math.abs(level.levelMm()),
        level.tight() ? "tight" : "open",
        2 * level.standardUncertaintyMm(),
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

  /** A number to be set on the scale. */
  static String setting(double value, double step) {
    return number(value, step > 0 ? step : SETTING_STEP, null);
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
