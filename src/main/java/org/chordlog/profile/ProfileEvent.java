package org.chordlog.profile;

import java.util.Arrays;
import org.chordlog.measure.BadInput;

/** Something that happened to the feed while a piece ran through, at a place of the piece. */
record ProfileEvent(Kind kind, long placeNm, long amount) {
  /** What it was, and what the amount means. */
  enum Kind {
    /** The feed stood still; milliseconds. */
    STOPPED(1),
    /** The piece was run back; nm. */
    JOGGED(2),
    /** The value did not change by one step; nm of feed. */
    UNCHANGED(3),
    /** No values came; nm of feed. */
    NO_VALUES(4);

    /** How it is stored. */
    final int code;

    Kind(int code) {
      this.code = code;
    }

    static Kind coded(long code) {
      return Arrays.stream(values())
          .filter(kind -> kind.code == code)
          .findFirst()
          .orElseThrow(() -> new BadInput("event", code, "is of no kind", "1 to 4"));
    }
  }
}
