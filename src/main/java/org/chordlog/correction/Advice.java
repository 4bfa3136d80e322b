package org.chordlog.correction;

import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** What is said to the operator after the newest piece or event. */
public sealed interface Advice {
  enum Action {
    CORRECT,
    LEAVE,
    TOO_EARLY,
    MEASURE_AGAIN,
    AMOUNT_UNKNOWN,
    NONE
  }

  enum Direction {
    TIGHTER,
    MORE_OPEN
  }

  /** What kind of advice it is. */
  Action action();

  /** One or two plain sentences. */
  Sentence text();

  /** What to do in a few words, to be read from afar; empty where nothing is to be done. */
  default Sentence act() {
    return Sentence.EMPTY;
  }

  /** Null while nothing is known of the level. */
  @Nullable LevelEstimate level();

  /** What to change on the scale, in its unit; null unless it is known. */
  default @Nullable Double amount() {
    return null;
  }

  /** Null unless it is known. */
  default @Nullable Double amountStandardUncertainty() {
    return null;
  }

  /**
   * On the scale: by {@code amount}, from and to which number (null while the scale's present
   * number is not known), and what that does to the bend.
   */
  record Move(
      double amount,
      @Nullable Double standardUncertainty,
      @Nullable Double from,
      @Nullable Double to,
      Direction direction) {}

  /** Radius expected after it, share of pieces out of tolerance, probability that it helps. */
  record Prospect(double radiusMm, double outBefore, double outAfter, double chance) {}

  /** Correct by that much. */
  record Correct(LevelEstimate level, MachineScale scale, Move move, Prospect prospect)
      implements Advice {
    @Override
    public Action action() {
      return Action.CORRECT;
    }

    @Override
    public Sentence text() {
      return AdviceText.of(this);
    }

    @Override
    public Sentence act() {
      return AdviceText.act(this);
    }

    @Override
    public @Nullable Double amount() {
      return move.amount();
    }

    @Override
    public @Nullable Double amountStandardUncertainty() {
      return move.standardUncertainty();
    }
  }

  /** Why the rollers are better left alone. */
  enum LeaveReason {
    WORTH_LESS_THAN_A_CORRECTION("less than a correction is worth"),
    LESS_THAN_A_STEP("less than the least step of the scale"),
    JOB_NEARLY_DONE("too few pieces are left for a correction to pay");

    private final String words;

    LeaveReason(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /** Leave the rollers alone. */
  record Leave(LevelEstimate level, LeaveReason reason) implements Advice {
    @Override
    public Action action() {
      return Action.LEAVE;
    }

    @Override
    public Sentence text() {
      return AdviceText.of(this);
    }
  }

  /** What a piece is awaited after. */
  enum Since {
    SET_UP("Set up: measure the first piece."),
    NEW_LOT("New lot: measure its first piece."),
    CORRECTION("Corrected: measure the next piece."),
    PIECE("");

    private final String words;

    Since(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /** About so many more pieces are needed; {@code since} says what nothing was measured after. */
  record TooEarly(@Nullable LevelEstimate level, int morePieces, Since since) implements Advice {
    @Override
    public Action action() {
      return Action.TOO_EARLY;
    }

    @Override
    public Sentence act() {
      return AdviceText.act(this);
    }

    @Override
    public Sentence text() {
      return AdviceText.of(this);
    }
  }

  /** The newest reading is a surprise: a wrong measurement, or the machine jumped. */
  record MeasureAgain(LevelEstimate level) implements Advice {
    @Override
    public Action action() {
      return Action.MEASURE_AGAIN;
    }

    @Override
    public Sentence act() {
      return Sentence.plain("Measure one more, or this one again.");
    }

    @Override
    public Sentence text() {
      return Sentence.plain(
          "The last piece stands out: measured wrong, or the machine jumped."
              + " Measure one more (or the same again).");
    }
  }

  /**
   * The direction is known, not yet how far that is on the scale; {@code changeMm} is the change of
   * radius, not negative. A flat has no radius to change: then it is infinite.
   */
  record AmountUnknown(
      LevelEstimate level, Direction direction, double changeMm, double standardUncertaintyMm)
      implements Advice {
    @Override
    public Action action() {
      return Action.AMOUNT_UNKNOWN;
    }

    @Override
    public Sentence act() {
      return AdviceText.act(this);
    }

    @Override
    public Sentence text() {
      return AdviceText.of(this);
    }
  }

  /** No advice, and why. */
  record None(Sentence why) implements Advice {
    @Override
    public Action action() {
      return Action.NONE;
    }

    @Override
    public @Nullable LevelEstimate level() {
      return null;
    }

    @Override
    public Sentence text() {
      return Sentence.of("No advice: %s", why);
    }
  }

  /** What is to be shown wherever advice is. */
  static String caution() {
    return "Measure and adjust only with the rollers stopped and the drive locked out;"
        + " the machine's manual and local rules come first.";
  }

  /**
   * The part of the gauge's uncertainty that is alike for all pieces (zero, span, permissible
   * error), for which no correction helps.
   */
  static Sentence commonUncertainty(double standardUncertaintyMm) {
    return Sentence.of(
        "Besides, the true radius of all pieces alike may differ by ± %s from what the gauge"
            + " says: no correction changes that.",
        Quantity.uncertainty(2 * standardUncertaintyMm));
  }
}
