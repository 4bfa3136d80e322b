package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * One piece or event of a machine, for charts. Levels are permil of {@code targetMm}'s curvature;
 * what a kind does not have is NaN, a text empty.
 */
public record TrailPoint(Kind kind, Where where, Level level, Gain gain, Move move) {
  /** What happened. */
  public enum Kind {
    PIECE,
    CORRECTION,
    LOT,
    SET_UP,
    TARGET,
    SCALE
  }

  /** Job, number of the newest piece in it (0: none yet), target then, material lot then. */
  public record Where(long job, int piece, double targetMm, String lot) {}

  /** The piece's value, the level after it with its standard uncertainty, half the deadband. */
  public record Level(
      double reading, double estimate, double standardUncertainty, double deadband) {}

  /** Change of curvature, 1/mm, for one unit of the scale. */
  public record Gain(double perMmPerUnit, double standardUncertainty) {}

  /** A reading as it came, NaN after an event; half the deadband then. */
  record Seen(double reading, double deadband) {}

  static TrailPoint of(Kind kind, JobState job, Belief now, Seen seen, Move move) {
    Aim aim = job.aim();
    return new TrailPoint(
        kind,
        new Where(job.job().job(), job.newest(), aim.targetMm(), job.lot()),
        new Level(seen.reading(), now.level(), now.levelUncertainty(), seen.deadband()),
        new Gain(aim.perMm(now.gain()), aim.perMm(now.gainUncertainty())),
        move);
  }

  /** In the scale's unit: what was advised before it, what was done. */
  public record Move(double advised, double done) {}

  void write(Packer to) {
    to.put(kind.name());
    to.put(where.job()).put(where.piece()).put(where.targetMm()).put(where.lot());
    to.put(level.reading()).put(level.estimate()).put(level.standardUncertainty());
    to.put(level.deadband()).put(gain.perMmPerUnit()).put(gain.standardUncertainty());
    to.put(move.advised()).put(move.done());
  }

  static TrailPoint read(Unpacker from) {
    Kind kind = Kind.valueOf(from.text());
    return new TrailPoint(
        kind,
        new Where(from.aLong(), from.anInt(), from.aDouble(), from.text()),
        new Level(from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble()),
        new Gain(from.aDouble(), from.aDouble()),
        new Move(from.aDouble(), from.aDouble()));
  }
}
