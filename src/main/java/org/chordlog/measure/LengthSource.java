package org.chordlog.measure;

/** Where the length along the feed comes from, and what may therefore be said. */
public enum LengthSource {
  /** A second value of the indicator's own frame. */
  CHANNEL(true, true),
  /** Counts on another link than the depths, with a delay between the two. */
  LINK(true, true),
  /** Edges of a pulse line, which has no direction: a line that reverses is not seen to. */
  PULSE(true, false),
  /** A stated constant feed: what stops or reverses is not seen. */
  SPEED(false, false),
  /** Nothing: depths in the order of time only. */
  NONE(false, false);

  private final boolean measured;
  private final boolean directed;

  LengthSource(boolean measured, boolean directed) {
    this.measured = measured;
    this.directed = directed;
  }

  /** Whether standstill shows, so that lengths can be relied on. */
  public boolean measured() {
    return measured;
  }

  /** Whether a reversal of the feed shows. */
  public boolean directed() {
    return directed;
  }
}
