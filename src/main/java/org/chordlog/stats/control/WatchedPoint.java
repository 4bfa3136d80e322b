package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** One of the newest points of a phase, with what the tests said when it was the newest. */
final class WatchedPoint {
  private final PointRef ref;
  private final Sums sums;
  private boolean strange;
  private int moved;
  private boolean wider;

  WatchedPoint(PointRef ref, Sums sums) {
    this.ref = ref;
    this.sums = sums;
  }

  PointRef ref() {
    return ref;
  }

  Sums sums() {
    return sums;
  }

  /** Whether it belongs to a spell, so that later points are not compared with it. */
  boolean strange() {
    return strange;
  }

  void markStrange() {
    strange = true;
  }

  /** The newest points up to this one, as many as window number {@code index} has, have moved. */
  void markMoved(int index) {
    moved |= 1 << index;
  }

  /** The newest points up to this one scatter more than those before. */
  void markWider() {
    wider = true;
  }

  /** Whether a test refused that the window number {@code index} up to this point is as before. */
  boolean refused(boolean ofSpread, int index) {
    return ofSpread ? wider && index == ControlTest.SPREAD_WINDOW : (moved & 1 << index) != 0;
  }

  void pack(Packer packer) {
    ref.pack(packer);
    sums.pack(packer);
    packer.put(strange).put(moved).put(wider);
  }

  static WatchedPoint unpack(Unpacker from) {
    WatchedPoint watched = new WatchedPoint(PointRef.unpack(from), Sums.unpack(from));
    watched.strange = from.aBoolean();
    watched.moved = from.anInt();
    watched.wider = from.aBoolean();
    return watched;
  }
}
