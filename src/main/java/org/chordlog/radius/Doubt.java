package org.chordlog.radius;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;

/**
 * A time in which the readings of a station and bridge are in doubt: after the last check that
 * passed (or the calibration) before a failed one, until the next pass or calibration; {@code
 * Long.MIN_VALUE} and {@code Long.MAX_VALUE} where there was none. Both ends are excluded.
 */
public record Doubt(long afterMicros, long beforeMicros) {
  private record Event(long micros, boolean trusted) {}

  /** All doubts of one station and bridge, in order of time. */
  public static List<Doubt> of(List<InterimCheck> checks, List<Calibration> calibrations) {
    List<Doubt> doubts = new ArrayList<>();
    long trusted = Long.MIN_VALUE;
    boolean failed = false;
    for (Event event : inOrder(checks, calibrations)) {
      if (event.trusted() && failed) {
        doubts.add(new Doubt(trusted, event.micros()));
      }
      trusted = event.trusted() ? event.micros() : trusted;
      failed = !event.trusted();
    }
    if (failed) {
      doubts.add(new Doubt(trusted, Long.MAX_VALUE));
    }
    return List.copyOf(doubts);
  }

  /** Whether a reading of that time is in doubt. */
  public boolean covers(long wallMicros) {
    return wallMicros > afterMicros && wallMicros < beforeMicros;
  }

  /** A calibration in the same microsecond as a check comes after it. */
  private static List<Event> inOrder(List<InterimCheck> checks, List<Calibration> calibrations) {
    return Stream.concat(
            checks.stream().map(check -> new Event(check.takenAtMicros(), check.passed())),
            calibrations.stream().map(c -> new Event(c.takenAtMicros(), true)))
        .sorted(Comparator.comparingLong(Event::micros))
        .toList();
  }
}
