package org.chordlog.stats.drift;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * Something that moved a machine's level: from where on, and up to where if it has ended. {@code
 * change} is the whole of it so far, relative and in curvature, as it would be without corrections;
 * {@code slope} of a creep is per piece, with its interval at 95 %; {@code lot} is the material lot
 * that came with it.
 */
public record DriftFinding(
    Kind kind,
    MachinePlace since,
    @Nullable MachinePlace until,
    double change,
    @Nullable TheilSen slope,
    Corrections corrections,
    String lot) {
  /** What moved the level. */
  public enum Kind {
    /** Piece by piece, also through corrections. */
    CREEP,
    /** At once, and no lot was recorded there. */
    JUMP,
    /** By creep or by a jump: too few pieces to tell which. */
    MOVE,
    /** At once with a recorded material lot. */
    LOT
  }

  private static final double HUNDRED = 100;

  DriftFinding ended(MachinePlace at) {
    return new DriftFinding(kind, since, at, change, slope, corrections, lot);
  }

  /** The slope over 100 pieces, relative and in curvature; null unless it creeps. */
  public @Nullable TheilSen perHundred() {
    return slope == null ? null : slope.per(HUNDRED);
  }

  /** What that relative change of curvature is in radius, mm, at a target radius. */
  public static double radiusMm(double change, double targetMm) {
    return targetMm / (1 + change) - targetMm;
  }

  void pack(Packer packer) {
    packer.put(kind.name());
    since.pack(packer);
    packer.put(until != null);
    (until == null ? since : until).pack(packer);
    packer.put(change).put(slope != null);
    TheilSen line = slope == null ? new TheilSen(0, 0, 0, 0) : slope;
    packer.put(line.slope()).put(line.lower()).put(line.upper()).put(line.intercept());
    corrections.pack(packer);
    packer.put(lot);
  }

  static DriftFinding unpack(Unpacker from) {
    Kind kind = Kind.valueOf(from.text());
    MachinePlace since = MachinePlace.unpack(from);
    boolean over = from.aBoolean();
    MachinePlace until = MachinePlace.unpack(from);
    double change = from.aDouble();
    boolean sloping = from.aBoolean();
    TheilSen line = new TheilSen(from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble());
    Corrections corrections = Corrections.unpack(from);
    return new DriftFinding(
        kind, since, over ? until : null, change, sloping ? line : null, corrections, from.text());
  }
}
