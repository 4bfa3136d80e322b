package org.chordlog.verdict;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * Is the machine steady? Said in the same words of the machine, its stations and its jobs. Changes
 * of radius are those at {@code targetMm}, null where no job of the machine has limits; a shift is
 * {@value #SHIFT_HOURS} hours at the pace of the newest pieces. {@code firstPiece}: which piece of
 * which job a move began with, empty where that has the machine's own number.
 */
public record MachineStatement(
    MachineVerdict verdict,
    @Nullable Double targetMm,
    @Nullable Double toleranceMm,
    GaugeBesideMachine gauge,
    String firstPiece) {
  public static final int SHIFT_HOURS = 8;
  private static final double HOUR = 3_600e6;
  private static final double HUNDRED = 100;

  /** Relative; further than that no creep goes on in a line. Judgement, no source. */
  private static final double MOST_IN_A_SHIFT = 0.1;

  private static final double LEAST_HOURS = 0.1;
  private static final String CAUTION =
      " Inspect the machine only with the rollers stopped and the drive locked out.";

  /** With a gauge that nothing is known against. */
  public MachineStatement(
      MachineVerdict verdict, @Nullable Double targetMm, @Nullable Double toleranceMm) {
    this(verdict, targetMm, toleranceMm, GaugeBesideMachine.TRUSTED, "");
  }

  /** What moves the machine now; steady, or too early to tell, where nothing does. */
  public Statement statement() {
    DriftFinding finding = verdict.finding();
    return finding == null ? quiet() : gauge.of(placed(moving(finding)));
  }

  /** A machine counts its pieces over all jobs, each job its own. */
  private Statement placed(Statement said) {
    return firstPiece.isEmpty()
        ? said
        : new Statement(
            said.tone(),
            said.word(),
            said.reason().and(Sentence.plain("It began with " + firstPiece + ".")),
            said.advice());
  }

  private Statement moving(DriftFinding finding) {
    String since = " since piece " + finding.since().piece();
    return switch (finding.kind()) {
      case CREEP ->
          new Statement(
              Tone.OPEN,
              "Machine creeping" + since,
              creep(finding).and(forecast()),
              Sentence.plain("Look for wear, heat, or a setting that gives way." + CAUTION));
      case JUMP ->
          new Statement(
              Tone.BAD,
              "Machine jumped at piece " + finding.since().piece(),
              Sentence.of("From then on its pieces came out %s.", tighter(finding.change())),
              Sentence.plain(
                  "Look for what was changed then: rollers, setting, tube, bridge." + CAUTION));
      case MOVE ->
          new Statement(
              Tone.OPEN,
              "Machine moved" + since,
              Sentence.of(
                  "Its pieces came out %s; whether at once or piece by piece can't be told yet.",
                  tighter(finding.change())),
              Sentence.plain("Measure more pieces before you look for a cause."));
      case LOT ->
          new Statement(
              Tone.OPEN,
              "Moved by lot " + finding.lot(),
              Sentence.of("With it the pieces came out %s%s.", tighter(finding.change()), since),
              Sentence.plain("Correct for the lot if that is too much."));
    };
  }

  private Statement quiet() {
    return verdict.state() == MachineVerdict.State.TOO_FEW
        ? Statement.of(
            Tone.QUIET,
            "Too few pieces to tell",
            "It takes " + MachineVerdict.LEAST + " pieces since the rollers were last set.")
        : new Statement(
            Tone.GOOD,
            "Machine steady",
            Sentence.plain("Neither a trend nor a step is seen.").and(before()),
            Sentence.EMPTY);
  }

  /** The newest thing that ended, so that it is not forgotten with a correction. */
  private Sentence before() {
    List<DriftFinding> history = verdict.history();
    return history.isEmpty()
        ? Sentence.EMPTY
        : Sentence.of("Before: %s", told(history.get(history.size() - 1)));
  }

  /** One finding as a sentence, without times. */
  public Sentence told(DriftFinding finding) {
    Sentence change = tighter(finding.change());
    long piece = finding.since().piece();
    String from = "from piece " + finding.since().piece();
    String to = finding.until() == null ? "" : " to " + (finding.until().piece() - 1);
    return switch (finding.kind()) {
      case CREEP -> Sentence.of("crept %s%s, %s%s.", from, to, change, corrected(finding));
      case JUMP -> Sentence.of("jumped at piece %d, %s.", piece, change);
      case MOVE -> Sentence.of("moved %s%s, %s.", from, to, change);
      case LOT -> Sentence.of("moved with lot %s %s%s, %s.", finding.lot(), from, to, change);
    };
  }

  private Sentence creep(DriftFinding finding) {
    TheilSen per = Objects.requireNonNull(finding.perHundred());
    Double shift = perShift(finding);
    Double pieces = piecesPerShift();
    return Sentence.of(
        "Its pieces get %s per 100 pieces (95 %% sure: %s)%s%s.",
        tighter(per.slope()),
        SlopeInterval.words(per.lower(), per.upper()),
        shift == null || pieces == null
            ? ""
            : Sentence.of(
                ", %s per shift of %.0f pieces (%d h)", tighter(shift), pieces, SHIFT_HOURS),
        corrected(finding));
  }

  private static String corrected(DriftFinding finding) {
    var corrections = finding.corrections();
    if (corrections.count() == 0) {
      return "";
    }
    String amount =
        corrections.recorded() == 0 ? "" : ", by " + signed(corrections.amount()) + " altogether";
    return "; corrected " + Counted.times(corrections.count()) + " meanwhile" + amount;
  }

  private static String signed(double amount) {
    return (amount > 0 ? "+" : "") + Decimals.withMinus(Decimals.setting(amount));
  }

  private Sentence forecast() {
    Double left = verdict.reachesTolerance();
    if (left == null || toleranceMm == null) {
      return Sentence.EMPTY;
    }
    Sentence limit = limit(toleranceMm, targetMm);
    if (left == 0) {
      return Sentence.of("It is past %s already.", limit);
    }
    Double hours = hoursLeft();
    return Sentence.of(
        "At this pace it reaches %s after about %s%s.",
        limit,
        Counted.of(Math.max(1, Math.round(left)), "piece"),
        hours == null || hours < LEAST_HOURS
            ? ""
            : String.format(Locale.ROOT, " (%.1f h of bending)", hours));
  }

  /** "the limit of 1800 ± 12 mm", without the radius where it is not known. */
  static Sentence limit(double toleranceMm, @Nullable Double targetMm) {
    Quantity tolerance = Quantity.stated(toleranceMm);
    return targetMm == null
        ? Sentence.of("the limit of ± %s", tolerance)
        : Sentence.of("the limit of %s ± %s", Quantity.stated(targetMm).withoutUnit(), tolerance);
  }

  /** The relative change of curvature as "0.23 % tighter (−4.2 mm at 1800 mm)". */
  private Sentence tighter(double change) {
    return tighter(change, targetMm);
  }

  /** The same at a target radius, null where there is none. */
  static Sentence tighter(double change, @Nullable Double targetMm) {
    String way = change > 0 ? "tighter" : "wider";
    Sentence percent = Sentence.of("%.2f %% %s", HUNDRED * Math.abs(change), way);
    return targetMm == null
        ? percent
        : Sentence.of(
            "%s (%s at %s)", percent, radius(change, targetMm), Quantity.stated(targetMm));
  }

  /** As fine as the change of curvature: two digits of a tenth of a percent. */
  private static Quantity radius(double change, double targetMm) {
    double tenth = Math.abs(DriftFinding.radiusMm(0.1 / HUNDRED, targetMm));
    return Quantity.of(DriftFinding.radiusMm(change, targetMm), tenth).withSign();
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
  public @Nullable Double perShift(DriftFinding finding) {
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
