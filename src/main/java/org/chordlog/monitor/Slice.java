package org.chordlog.monitor;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Reading;
import org.chordlog.store.MaterialLots;
import org.jspecify.annotations.Nullable;

/**
 * A part of a job: readings with ids above one up to another, as between two events, and between
 * two times, and of one material lot; null is open, an empty lot that of none named. Its statistics
 * are those of its readings alone.
 */
public record Slice(
    long aboveId,
    long upToId,
    @Nullable Long fromMicros,
    @Nullable Long toMicros,
    @Nullable String lot) {
  public static final Slice WHOLE = new Slice(0, Long.MAX_VALUE, null, null, null);

  /** Of all lots. */
  public Slice(long aboveId, long upToId, @Nullable Long fromMicros, @Nullable Long toMicros) {
    this(aboveId, upToId, fromMicros, toMicros, null);
  }

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

  /** {@code lots}: of its job. */
  boolean holds(Reading reading, MaterialLots lots) {
    return holds(reading.wallMicros()) && (lot == null || lot.equals(lots.of(reading)));
  }

  private boolean holds(long micros) {
    return (fromMicros == null || micros >= fromMicros) && (toMicros == null || micros <= toMicros);
  }
}
