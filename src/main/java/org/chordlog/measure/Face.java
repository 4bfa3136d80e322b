package org.chordlog.measure;

/**
 * Where a radius is measured or specified; the bridge stands on {@link #OUTER} or {@link #INNER}.
 */
public enum Face {
  OUTER,
  INNER,
  CENTRELINE
}
