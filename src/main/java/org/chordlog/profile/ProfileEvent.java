package org.chordlog.profile;

/** Something that happened to the feed while a piece ran through, at a place of the piece. */
public record ProfileEvent(Kind kind, long placeNm, long amount) {
  /** What it was, and what the amount means. */
  public enum Kind {
    /** The feed stood still; milliseconds. */
    STOPPED,
    /** The piece was run back; nm. */
    JOGGED,
    /** The value did not change by one step; nm of feed. */
    UNCHANGED,
    /** No values came; nm of feed. */
    NO_VALUES
  }
}
