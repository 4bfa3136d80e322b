package org.chordlog.stats.control;

import org.chordlog.stats.control.Signal.Side;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * A stretch of points that a steady process would hardly give. It probably began at {@code since},
 * was noticed at {@code called}, and {@code newest} is the last of the {@code count} points at
 * which the test refused a steady process. {@code chance} bounds the probability that a steady
 * process gives evidence as strong anywhere in a record of as many points (Bonferroni). {@code
 * answered}: its cause was found.
 */
public record Spell(
    int phase,
    Kind kind,
    Side side,
    PointRef since,
    PointRef called,
    PointRef newest,
    long count,
    double chance,
    boolean answered) {
  /** What the points say. */
  public enum Kind {
    /** One point by itself lies too far out. */
    FAR_POINT,
    /** The newest points lie on another level than those before. */
    LEVEL,
    /** The newest points scatter more than those before; the side is ABOVE. */
    SPREAD
  }

  public boolean ofSpread() {
    return kind == Kind.SPREAD;
  }

  /** A further point of the same; once the level has moved, a far point says no more. */
  Spell with(Kind more, PointRef now, double smaller) {
    Kind both = kind == Kind.FAR_POINT ? more : kind;
    double least = Math.min(chance, smaller);
    return new Spell(phase, both, side, since, called, now, count + 1, least, answered);
  }

  /** Its chance among so many tests. */
  Spell among(long tests) {
    double anywhere = Math.min(1, chance * tests);
    return new Spell(phase, kind, side, since, called, newest, count, anywhere, answered);
  }

  Spell answered(boolean so) {
    return new Spell(phase, kind, side, since, called, newest, count, chance, so);
  }

  /** What is left of it after an answer: it begins and is noticed later. */
  Spell from(PointRef later, PointRef calledAgain) {
    return new Spell(phase, kind, side, later, calledAgain, newest, count, chance, false);
  }

  void pack(Packer packer) {
    packer.put(phase).put(kind.name()).put(side.name());
    since.pack(packer);
    called.pack(packer);
    newest.pack(packer);
    packer.put(count).put(chance);
  }

  static Spell unpack(Unpacker from) {
    return new Spell(
        from.anInt(),
        Kind.valueOf(from.text()),
        Side.valueOf(from.text()),
        PointRef.unpack(from),
        PointRef.unpack(from),
        PointRef.unpack(from),
        from.aLong(),
        from.aDouble(),
        false);
  }
}
