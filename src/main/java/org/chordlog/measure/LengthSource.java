package org.chordlog.measure;

/** Where the length along the feed comes from, and what may therefore be said. */
public enum LengthSource {
  /** A second value of the indicator's own frame. */
  CHANNEL(true),
  /** Counts on another link than the depths, with a delay between the two. */
  LINK(true),
  /** Edges of a pulse line, which has no direction: a line that reverses is not seen to. */
  PULSE(true),
  /** A stated constant feed: what stops or reverses is not seen. */
  SPEED(false),
  /** Nothing: depths in the order of time only. */
  NONE(false);

  private final boolean measured;

  LengthSource(boolean measured) {
    this.measured = measured;
  }

  /** Whether standstill shows, so that lengths can be relied on. */
  public boolean measured() {
    return measured;
  }
}
