package org.chordlog.store;

import org.chordlog.measure.BadInput;

/** How far a reader of the feed has come: the newest change of a fact, and the newest reading. */
public record FeedPlace(long revision, long readingId) {
  /** Before everything. */
  public static final FeedPlace BEGINNING = new FeedPlace(0, 0);

  public FeedPlace {
    if (revision < 0 || readingId < 0) {
      throw new BadInput("place", revision + ", " + readingId, "is negative", "0 or more");
    }
  }
}
