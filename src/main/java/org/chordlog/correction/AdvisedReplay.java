package org.chordlog.correction;

import java.util.List;
import org.chordlog.correction.AsAdvised.Course;
import org.jspecify.annotations.Nullable;

/** The filter of that time, told the pieces as they would have been. */
final class AdvisedReplay {
  /** What happened, at one target and on one scale; not empty. */
  record Past(List<TrailPoint> points, Aim aim, MachineScale scale, Tuning tuning) {
    /** Permil for one unit of the scale, as found in the end. */
    double permilPerUnit() {
      return aim.permilOfDifference(points.get(points.size() - 1).gain().perMmPerUnit());
    }
  }

  private final Aim aim;
  private final Corrector corrector;
  private final double permilPerUnit;
  private final Tally bent = new Tally();
  private final Tally advised = new Tally();
  private double done;
  private double moved;
  private int pieces;
  private String lot;

  private AdvisedReplay(Past past, double permilPerUnit) {
    TrailPoint first = past.points().get(0);
    this.permilPerUnit = permilPerUnit;
    aim = past.aim();
    lot = first.where().lot();
    GainPrior then = new GainPrior(first.gain().perMmPerUnit(), first.gain().standardUncertainty());
    corrector = new Corrector(past.scale().withGain(then), past.tuning());
    corrector.tell(new Told.JobStart(first.where().job(), aim, "", "", lot, null));
  }

  /** With a scale of which one unit does {@code share} of what it was found to do. */
  static AdvisedReplay of(Past past, double share) {
    AdvisedReplay replay = new AdvisedReplay(past, share * past.permilPerUnit());
    past.points().forEach(replay::take);
    return replay;
  }

  int pieces() {
    return pieces;
  }

  Course bent() {
    return bent.course(pieces, aim);
  }

  Course advised() {
    return advised.course(pieces, aim);
  }

  private void take(TrailPoint point) {
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
