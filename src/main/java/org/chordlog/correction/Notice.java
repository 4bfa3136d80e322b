package org.chordlog.correction;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Something to be told or asked beside the advice. {@code amount}: on the scale, of the move that
 * is asked about, null where none is.
 */
public record Notice(Kind kind, String text, @Nullable Double amount) {
  /** What it is about. */
  public enum Kind {
    /** The number on the scale was not what it was after the last recorded correction. */
    UNRECORDED_MOVE,
    /** The last piece is off by about what was advised, and nothing was recorded. */
    DID_YOU_CORRECT,
    /** Moves that reverse the direction fall short. */
    LOST_MOTION,
    /** No roller setting puts all positions right. */
    POSITIONS_DIFFER,
    /** Recorded corrections work the other way round than the scale was said to. */
    SCALE_REVERSED
  }

  static Notice unrecorded(double expected, double found, MachineScale scale) {
    return new Notice(
        Kind.UNRECORDED_MOVE,
        "The "
            + scale.name()
            + " read "
            + setting(found, scale)
            + " before this correction, but "
            + setting(expected, scale)
            + " after the last one: were the rollers moved between, or is a number wrong?",
        found - expected);
  }

  static Notice didYouCorrect(double amount, MachineScale scale) {
    return new Notice(
        Kind.DID_YOU_CORRECT,
        "The last piece moved by about what was advised ("
            + AdviceText.signed(amount, scale.step())
            + AdviceText.unit(scale.unit())
            + "), and nothing was recorded: did you correct?",
        amount);
  }

  static Notice lostMotion(LostMotion.Found found, MachineScale scale) {
    return new Notice(
        Kind.LOST_MOTION,
        String.format(
            Locale.ROOT,
            "Lost motion of about %.2g%s (± %.1g): always come from the same side.",
            found.amount(),
            AdviceText.unit(scale.unit()),
            2 * found.standardUncertainty()),
        null);
  }

  static Notice positionsDiffer(String tightest, String openest, double mm, double u) {
    return new Notice(
        Kind.POSITIONS_DIFFER,
        String.format(
            Locale.ROOT,
            "%s and %s differ by %.1f mm (± %.1f): no roller setting puts both right;"
                + " the middle between them is aimed at.",
            tightest,
            openest,
            mm,
            2 * u),
        null);
  }

  static Notice reversed(MachineScale scale) {
    return new Notice(
        Kind.SCALE_REVERSED,
        "The "
            + scale.name()
            + " is said to bend tighter to the other side than the recorded corrections show:"
            + " check its description.",
        null);
  }

  private static String setting(double value, MachineScale scale) {
    return AdviceText.setting(value, scale.step());
  }
}
