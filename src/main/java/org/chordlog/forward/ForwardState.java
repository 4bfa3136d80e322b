package org.chordlog.forward;

/** How the delivery to the plant is going. */
public enum ForwardState {
  /** Not connected since the start, or between two attempts. */
  CONNECTING,
  /** Connected, with more to deliver. */
  DELIVERING,
  /** Everything recorded here is at the plant. */
  COMPLETE,
  /** The plant can't be reached or can't take anything now; tried again by itself. */
  WAITING,
  /** Somebody must change something first; tried again all the same. */
  REFUSED
}
