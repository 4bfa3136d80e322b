package org.chordlog.correction;

import java.util.List;
import java.util.Optional;
import org.chordlog.correction.TrailPoint.Kind;
import org.jspecify.annotations.Nullable;

/**
 * The pieces of a job as they were bent, and as they would have been had each advice been followed:
 * the effect of what was done is taken off each piece, that of the advice put on, both by what one
 * unit of the scale was found to do. Lost motion and errors of moves are left out.
 */
public record AsAdvised(int pieces, Course bent, Course advised) {
  private static final int LEAST_PIECES = 10;

  /** A gain known worse than that, relative, would make it a guess. */
  private static final double WORST_GAIN = 0.25;

  /** Root mean square deviation from the target, pieces out of tolerance, corrections. */
  public record Course(double rootMeanSquareMm, int out, int corrections) {}

  /**
   * {@code job}: a machine's trail while that job was on it, the target unchanged. Empty where the
   * gain is not known well enough, an amount was not recorded, or scale or target changed.
   */
  public static Optional<AsAdvised> of(
      List<TrailPoint> job, Aim aim, MachineScale scale, Tuning tuning) {
    long pieces = job.stream().filter(each -> each.kind() == Kind.PIECE).count();
    boolean traced = job.stream().allMatch(each -> traced(each, aim));
    if (pieces < LEAST_PIECES || !traced || !known(job.get(job.size() - 1).gain())) {
      return Optional.empty();
    }
    Replay replay = new Replay(job, aim, scale, tuning);
    job.forEach(replay::take);
    return Optional.of(replay.result());
  }

  private static boolean known(TrailPoint.Gain gain) {
    return gain.standardUncertainty() < WORST_GAIN * Math.abs(gain.perMmPerUnit());
  }

  private static boolean traced(TrailPoint point, Aim aim) {
    return switch (point.kind()) {
      case CORRECTION -> !Double.isNaN(point.move().done());
      case TARGET, SCALE -> false;
      case PIECE, LOT, SET_UP -> point.where().targetMm() == aim.targetMm();
    };
  }

  /** The filter of that time, told the pieces as advised. */
  private static final class Replay {
    private final Aim aim;
    private final Corrector corrector;

    /** Permil for one unit of the scale, as found in the end. */
    private final double permilPerUnit;

    private final Tally bent = new Tally();
    private final Tally advised = new Tally();
    private double done;
    private double moved;
    private int pieces;
    private String lot;

    Replay(List<TrailPoint> job, Aim aim, MachineScale scale, Tuning tuning) {
      TrailPoint first = job.get(0);
      this.aim = aim;
      lot = first.where().lot();
      GainPrior then =
          new GainPrior(first.gain().perMmPerUnit(), first.gain().standardUncertainty());
      corrector = new Corrector(scale.withGain(then), tuning);
      corrector.tell(new Told.JobStart(first.where().job(), aim, "", "", lot, null));
      permilPerUnit = aim.permilOfDifference(job.get(job.size() - 1).gain().perMmPerUnit());
    }

    void take(TrailPoint point) {
      switch (point.kind()) {
        case PIECE -> piece(point.level().reading());
        case CORRECTION -> {
          done += point.move().done();
          bent.corrections++;
        }
        case LOT -> another(point.where().lot());
        case SET_UP -> setUp();
        case TARGET, SCALE -> throw new IllegalStateException(point.kind().name());
      }
    }

    private void another(String name) {
      if (name.isEmpty() || !name.equals(lot)) {
        corrector.tell(new Told.Lot(name));
        lot = name;
      }
    }

    private void setUp() {
      done = 0;
      moved = 0;
      if (pieces > 0) {
        corrector.tell(new Told.SetUp(null));
      }
    }

    private void piece(double permil) {
      pieces++;
      double other = permil + permilPerUnit * (moved - done);
      bent.add(permil, aim);
      advised.add(other, aim);
      double curvature = (1 + other / Aim.PERMIL) / aim.targetMm();
      corrector.tell(new Told.Piece(pieces, List.of(new PieceReading("", 1, curvature, 0, false))));
      follow(corrector.advice().amount());
    }

    private void follow(@Nullable Double amount) {
      if (amount != null) {
        moved += amount;
        advised.corrections++;
        corrector.tell(Told.Correction.by(amount));
      }
    }

    AsAdvised result() {
      return new AsAdvised(pieces, bent.course(pieces, aim), advised.course(pieces, aim));
    }
  }

  /** Adds up one course of the pieces. */
  private static final class Tally {
    private double squares;
    private int out;
    private int corrections;

    void add(double permil, Aim aim) {
      squares += permil * permil;
      out += permil > aim.tightLimit() || permil < aim.openLimit() ? 1 : 0;
    }

    Course course(int pieces, Aim aim) {
      return new Course(aim.mm(Math.sqrt(squares / pieces)), out, corrections);
    }
  }
}
