package org.chordlog.correction;

import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Something to be told or asked beside the advice. {@code amount}: on the scale, of the move that
 * is asked about, null where none is.
 */
public record Notice(Kind kind, Sentence text, @Nullable Double amount) {
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
    SCALE_REVERSED,
    /** More is needed than the rollers are to be moved at once. */
    PART_OF_THE_WAY
  }

  static Notice unrecorded(double expected, double found, MachineScale scale) {
    return new Notice(
        Kind.UNRECORDED_MOVE,
        Sentence.of(
            "The %s read %s before this correction, but %s after the last one: were the rollers"
                + " moved between, or is a number wrong?",
            scale.name(), setting(found, scale), setting(expected, scale)),
        found - expected);
  }

  static Notice didYouCorrect(double amount, MachineScale scale) {
    return new Notice(
        Kind.DID_YOU_CORRECT,
        Sentence.of(
            "The last piece moved by about what was advised (%s%s), and nothing was recorded: did"
                + " you correct?",
            AdviceText.signed(amount, scale.step()), AdviceText.unit(scale.unit())),
        amount);
  }

  static Notice lostMotion(LostMotion.Found found, MachineScale scale) {
    return new Notice(
        Kind.LOST_MOTION,
        Sentence.of(
            "Lost motion of about %.2g%s (± %.1g): always come from the same side.",
            found.amount(), AdviceText.unit(scale.unit()), 2 * found.standardUncertainty()),
        null);
  }

  static Notice positionsDiffer(String tightest, String openest, double mm, double u) {
    return new Notice(
        Kind.POSITIONS_DIFFER,
        Sentence.of(
            "%s and %s differ by %s (± %s): no roller setting puts both right;"
                + " the middle between them is aimed at.",
            tightest, openest, Quantity.of(mm, 2 * u), AdviceText.expanded(u)),
        null);
  }

  static Notice reversed(MachineScale scale) {
    return new Notice(
        Kind.SCALE_REVERSED,
        Sentence.of(
            "The %s is said to bend tighter to the other side than the recorded corrections show:"
                + " check its description.",
            scale.name()),
        null);
  }

  static Notice partOfTheWay(double all, double tried, MachineScale scale) {
    return new Notice(
        Kind.PART_OF_THE_WAY,
        Sentence.of(
            "That is part of the way: by what is known it takes %s%s, but no move over %s%s was"
                + " recorded yet. Check the last readings, and measure a piece after this move.",
            AdviceText.setting(Math.abs(all), scale.step()),
            AdviceText.unit(scale.unit()),
            AdviceText.setting(tried, scale.step()),
            AdviceText.unit(scale.unit())),
        null);
  }

  private static String setting(double value, MachineScale scale) {
    return AdviceText.setting(value, scale.step());
  }
}
