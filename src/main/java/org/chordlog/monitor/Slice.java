package org.chordlog.monitor;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * A part of a job: readings with ids above one up to another, as between two events, and between
 * two times; null is open. Its statistics are those of its readings alone.
 */
public record Slice(long aboveId, long upToId, @Nullable Long fromMicros, @Nullable Long toMicros) {
  public static final Slice WHOLE = new Slice(0, Long.MAX_VALUE, null, null);

  public Slice {
    Check.within("aboveId", aboveId, 0, Long.MAX_VALUE);
    if (upToId < aboveId) {
      throw new BadInput("upToId", upToId, "is below aboveId", "from " + aboveId);
    }
    if (fromMicros != null && toMicros != null && fromMicros > toMicros) {
      throw new BadInput("fromMicros", fromMicros, "is after toMicros", "up to " + toMicros);
    }
  }

  public boolean whole() {
    return equals(WHOLE);
  }

  boolean holds(long micros) {
    return (fromMicros == null || micros >= fromMicros) && (toMicros == null || micros <= toMicros);
  }
}
