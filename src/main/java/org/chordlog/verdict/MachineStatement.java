package org.chordlog.verdict;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.chordlog.stats.drift.Finding;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * Is the machine steady? Said in the same words of the machine, its stations and its jobs. Changes
 * of radius are those at {@code targetMm}, null where no job of the machine has limits; a shift is
 * {@value #SHIFT_HOURS} hours at the pace of the newest pieces.
 */
public record MachineStatement(
    MachineVerdict verdict, @Nullable Double targetMm, @Nullable Double toleranceMm) {
  public static final int SHIFT_HOURS = 8;
  private static final double HOUR = 3_600e6;
  private static final double HUNDRED = 100;

  /** Relative; further than that no creep goes on in a line. Judgement, no source. */
  private static final double MOST_IN_A_SHIFT = 0.1;

  private static final double LEAST_HOURS = 0.1;
  private static final String CAUTION =
      " Inspect the machine only with the rollers stopped and the drive locked out.";

  public Statement statement() {
    Finding finding = verdict.finding();
    if (finding == null) {
      return quiet();
    }
    String since = " since piece " + finding.since().piece();
    return switch (finding.kind()) {
      case CREEP ->
          new Statement(
              Tone.OPEN,
              "Machine creeping" + since,
              creep(finding) + forecast(),
              "Look for wear, heat, or a setting that gives way." + CAUTION);
      case JUMP ->
          new Statement(
              Tone.BAD,
              "Machine jumped at piece " + finding.since().piece(),
              "From then on its pieces came out " + tighter(finding.change()) + ".",
              "Look for what was changed then: rolls, setting, tube, bridge." + CAUTION);
      case MOVE ->
          new Statement(
              Tone.OPEN,
              "Machine moved" + since,
              "Its pieces came out "
                  + tighter(finding.change())
                  + "; whether at once or piece by piece can't be told yet.",
              "Measure more pieces before you look for a cause.");
      case LOT ->
          new Statement(
              Tone.OPEN,
              "Moved by lot " + finding.lot(),
              "With it the pieces came out " + tighter(finding.change()) + since + ".",
              "Correct for the lot if that is too much.");
    };
  }

  private Statement quiet() {
    return verdict.state() == MachineVerdict.State.TOO_FEW
        ? Statement.of(
            Tone.QUIET,
            "Too few pieces to tell",
            "It takes " + MachineVerdict.LEAST + " pieces since the rollers were last set.")
        : Statement.of(
            Tone.GOOD, "Machine steady", "Neither a trend nor a step is seen." + before());
  }

  /** The newest thing that ended, so that it is not forgotten with a correction. */
  private String before() {
    List<Finding> history = verdict.history();
    return history.isEmpty() ? "" : " Before: " + told(history.get(history.size() - 1));
  }

  /** One finding as a sentence, without times. */
  public String told(Finding finding) {
    String from = "from piece " + finding.since().piece();
    String to = finding.until() == null ? "" : " to " + (finding.until().piece() - 1);
    return switch (finding.kind()) {
      case CREEP ->
          "crept " + from + to + ", " + tighter(finding.change()) + corrected(finding) + ".";
      case JUMP ->
          "jumped at piece " + finding.since().piece() + ", " + tighter(finding.change()) + ".";
      case MOVE -> "moved " + from + to + ", " + tighter(finding.change()) + ".";
      case LOT ->
          "moved with lot "
              + finding.lot()
              + " "
              + from
              + to
              + ", "
              + tighter(finding.change())
              + ".";
    };
  }

  private String creep(Finding finding) {
    TheilSen per = Objects.requireNonNull(finding.perHundred());
    Double shift = perShift(finding);
    return String.format(
        Locale.ROOT,
        "Its pieces get %s per 100 pieces (95 %%: %+.2f to %+.2f %% of curvature)%s%s.",
        tighter(per.slope()),
        HUNDRED * per.lower(),
        HUNDRED * per.upper(),
        shift == null
            ? ""
            : String.format(
                Locale.ROOT,
                ", %s per shift of %.0f pieces (%d h)",
                tighter(shift),
                piecesPerShift(),
                SHIFT_HOURS),
        corrected(finding));
  }

  private static String corrected(Finding finding) {
    var corrections = finding.corrections();
    if (corrections.count() == 0) {
      return "";
    }
    String amount =
        corrections.recorded() == 0
            ? ""
            : String.format(Locale.ROOT, ", by %+.3g in all", corrections.amount());
    return "; corrected " + Counted.of(corrections.count(), "time") + " meanwhile" + amount;
  }

  private String forecast() {
    Double left = verdict.reachesTolerance();
    if (left == null || toleranceMm == null) {
      return "";
    }
    String limit = String.format(Locale.ROOT, " the limit of ± %.1f mm ", toleranceMm);
    if (left == 0) {
      return " It is past" + limit + "already.";
    }
    Double hours = hoursLeft();
    return String.format(
        Locale.ROOT,
        " At this pace it reaches%sin about %s%s.",
        limit,
        Counted.of(Math.max(1, Math.round(left)), "piece"),
        hours == null || hours < LEAST_HOURS
            ? ""
            : String.format(Locale.ROOT, " (%.1f h of bending)", hours));
  }

  /** The relative change of curvature as "0.23 % tighter (−4.2 mm)". */
  private String tighter(double change) {
    String way = change > 0 ? "tighter" : "wider";
    String percent = String.format(Locale.ROOT, "%.2f %% %s", HUNDRED * Math.abs(change), way);
    return targetMm == null
        ? percent
        : percent
            + String.format(Locale.ROOT, " (%+.1f mm)", Finding.radiusMm(change, targetMm))
                .replace('-', '−');
  }

  /** Pieces of a shift at the pace of the newest ones; null while that is not known. */
  public @Nullable Double piecesPerShift() {
    Double pace = verdict.microsPerPiece();
    return pace == null || !(pace > 0) ? null : (Double) (SHIFT_HOURS * HOUR / pace);
  }

  /**
   * Relative change of curvature in a shift by a creep; null where it does not creep, or so much
   * that the line would not go on as far.
   */
  public @Nullable Double perShift(Finding finding) {
    TheilSen slope = finding.slope();
    Double pieces = piecesPerShift();
    if (slope == null || pieces == null) {
      return null;
    }
    double change = slope.slope() * pieces;
    return Math.abs(change) > MOST_IN_A_SHIFT ? null : (Double) change;
  }

  /** Hours of bending until a creep reaches the tolerance. */
  public @Nullable Double hoursLeft() {
    Double left = verdict.reachesTolerance();
    Double pace = verdict.microsPerPiece();
    return left == null || pace == null ? null : (Double) (left * pace / HOUR);
  }
}
