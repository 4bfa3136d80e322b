package org.chordlog.notify.rule;

import static org.chordlog.measure.alert.AlertKind.ROLLER_CREEPS;
import static org.chordlog.measure.alert.AlertKind.ROLLER_JUMPED;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * What one scheduled judgement of a machine says to maintenance: the machine's verdict, where what
 * it found matters against the tolerance. {@code completePieces} were judged.
 */
public record MachineJudgement(
    String machine, MachineVerdict verdict, @Nullable MachineLimits limits, long completePieces) {
  /** A creep is looked at over so many pieces, half a week at 400. */
  static final double HORIZON = 200;

  /** Of the tolerance from limit to limit: what a creep must change over {@link #HORIZON}... */
  static final double CREEP_PART = 0.1;

  /** ...and a jump at once. */
  static final double JUMP_PART = 0.05;

  /** In standard deviations of a piece: a jump, and a creep over the horizon without limits. */
  static final double JUMP_SIGMA = 2;

  static final double CREEP_SIGMA = 1;

  /** A limit is near that may be reached within so many pieces. */
  static final double NEAR = 50;

  private static final double HOUR_MICROS = 3_600e6;

  /** Whether there were enough pieces to say anything. */
  boolean tells() {
    return verdict.state() != MachineVerdict.State.TOO_FEW;
  }

  /** Whether the level moved, but for a recorded lot, by however little. */
  boolean moved() {
    DriftFinding finding = verdict.finding();
    return finding != null && finding.kind() != DriftFinding.Kind.LOT;
  }

  /** Whether a creep is among what moves the machine now, the gravest or not. */
  boolean creepsToo() {
    return verdict.findings().stream().anyMatch(each -> each.kind() == DriftFinding.Kind.CREEP);
  }

  private boolean matters() {
    DriftFinding finding = verdict.finding();
    return finding != null
        && switch (finding.kind()) {
          case CREEP -> creepMatters(finding);
          case JUMP, MOVE -> jumpMatters(finding);
          case LOT -> false;
        };
  }

  /**
   * What it says, with nothing for what does not matter. A move of which it can't be told whether
   * it came at once counts as a creep, the commoner of the two.
   */
  Optional<AlertKind> kind() {
    DriftFinding finding = verdict.finding();
    return finding == null || !matters()
        ? Optional.empty()
        : switch (finding.kind()) {
          case CREEP, MOVE -> Optional.of(ROLLER_CREEPS);
          case JUMP -> Optional.of(ROLLER_JUMPED);
          case LOT -> Optional.empty();
        };
  }

  private boolean creepMatters(DriftFinding finding) {
    TheilSen slope = finding.slope();
    double change = slope == null ? 0 : Math.abs(slope.slope()) * HORIZON;
    return limits == null
        ? change > CREEP_SIGMA * scatter()
        : change > CREEP_PART * limits.relativeWidth();
  }

  private boolean jumpMatters(DriftFinding finding) {
    double change = Math.abs(finding.change());
    boolean wide = limits == null || change > JUMP_PART * limits.relativeWidth();
    return wide && change > JUMP_SIGMA * scatter();
  }

  private double scatter() {
    Double scatter = verdict.scatter();
    return scatter == null ? 0 : scatter;
  }

  /** Whether a creep may reach a limit within that many pieces. */
  boolean reachesWithin(double pieces) {
    Double left = leftAtLeast();
    return left != null && left <= pieces;
  }

  /** By the end of the slope's interval that is faster; null where it does not creep or limit. */
  private @Nullable Double leftAtLeast() {
    DriftFinding finding = verdict.finding();
    TheilSen slope = finding == null ? null : finding.slope();
    Double level = verdict.level();
    if (slope == null || level == null || limits == null || verdict.reachesTolerance() == null) {
      return null;
    }
    double fastest = slope.slope() > 0 ? slope.upper() : slope.lower();
    double limit = Math.signum(slope.slope()) * limits.relativeWidth() / 2;
    return Math.max(0, (limit - level) / fastest);
  }

  /** {@code limitNear}: with how soon a limit may be reached. */
  Found found(AlertKind kind, boolean limitNear) {
    return new Found(AlertKey.machine(kind, machine), AlertEvidence.of(figures(limitNear)));
  }

  private Map<AlertFigure, Double> figures(boolean limitNear) {
    Map<AlertFigure, Double> figures = new EnumMap<>(AlertFigure.class);
    figures.put(AlertFigure.PIECES, (double) completePieces);
    DriftFinding finding = verdict.finding();
    if (finding != null) {
      figures.put(AlertFigure.SINCE_PIECE, (double) finding.since().piece());
      figures.put(AlertFigure.CHANGE, finding.change());
      figures.put(AlertFigure.CORRECTIONS, (double) finding.corrections().count());
      slope(finding.slope(), figures);
    }
    if (limits != null) {
      figures.put(AlertFigure.TARGET_MM, limits.targetMm());
      figures.put(AlertFigure.TOLERANCE_MM, limits.toleranceMm());
    }
    put(figures, AlertFigure.PIECES_LEFT, verdict.reachesTolerance());
    put(figures, AlertFigure.HOURS_LEFT, hoursLeft());
    if (limitNear) {
      put(figures, AlertFigure.PIECES_LEFT_AT_LEAST, leftAtLeast());
    }
    return figures;
  }

  private @Nullable Double hoursLeft() {
    Double left = verdict.reachesTolerance();
    Double pace = verdict.microsPerPiece();
    return left == null || pace == null ? null : (Double) (left * pace / HOUR_MICROS);
  }

  private static void slope(@Nullable TheilSen slope, Map<AlertFigure, Double> figures) {
    if (slope != null) {
      figures.put(AlertFigure.CHANGE_PER_PIECE, slope.slope());
      figures.put(AlertFigure.CHANGE_PER_PIECE_LOWER, slope.lower());
      figures.put(AlertFigure.CHANGE_PER_PIECE_UPPER, slope.upper());
    }
  }

  private static void put(
      Map<AlertFigure, Double> figures, AlertFigure figure, @Nullable Double value) {
    if (value != null) {
      figures.put(figure, value);
    }
  }
}
