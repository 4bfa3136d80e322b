package org.chordlog.measure;

/**
 * Where a radius is measured or specified; the bridge stands on {@link #OUTER} or {@link #INNER}.
 */
public enum Face {
  OUTER("outer face"),
  INNER("inner face"),
  CENTRELINE("centreline");

  private final String words;

  Face(String words) {
    this.words = words;
  }

  /** In plain words. */
  public String words() {
    return words;
  }
}
