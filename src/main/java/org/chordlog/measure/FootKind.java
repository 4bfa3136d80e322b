package org.chordlog.measure;

/** How a bridge's feet touch the piece, which decides what standing askew does to a reading. */
public enum FootKind {
  /** Two points. */
  POINT,
  /** Two balls of the foot radius. */
  BALL,
  /** Edges, or rollers of the foot radius, that lie across the piece. */
  ACROSS,
  /** Edges along the piece: each touches at one point. */
  ALONG
}
