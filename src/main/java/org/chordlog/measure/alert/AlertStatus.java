package org.chordlog.measure.alert;

import org.chordlog.measure.BadInput;

/**
 * The state of an alert. {@code present}: what it is about is still so; {@code sinceMicros}: when
 * it was raised; {@code shelvedUntilMicros}: 0 unless it is shelved; {@code unsteady}: it came and
 * went too often to be told each time. Times in UTC microseconds.
 */
public record AlertStatus(
    AlertState state,
    boolean present,
    long sinceMicros,
    long changedMicros,
    long shelvedUntilMicros,
    boolean unsteady) {
  public AlertStatus {
    if ((state == AlertState.SHELVED) != (shelvedUntilMicros > 0)) {
      throw new BadInput(
          "shelvedUntil", shelvedUntilMicros, "does not go with " + state, "a time while shelved");
    }
  }

  /** As an alert begins. */
  public static AlertStatus raised(long atMicros, boolean unsteady) {
    return new AlertStatus(AlertState.UNACKNOWLEDGED, true, atMicros, atMicros, 0, unsteady);
  }

  /** In another state, not shelved. */
  public AlertStatus in(AlertState next, long atMicros) {
    return new AlertStatus(next, present, sinceMicros, atMicros, 0, unsteady);
  }

  public AlertStatus shelved(long untilMicros, long atMicros) {
    return new AlertStatus(
        AlertState.SHELVED, present, sinceMicros, atMicros, untilMicros, unsteady);
  }

  public AlertStatus withPresent(boolean so) {
    return new AlertStatus(state, so, sinceMicros, changedMicros, shelvedUntilMicros, unsteady);
  }

  public AlertStatus withUnsteady(boolean so) {
    return new AlertStatus(state, present, sinceMicros, changedMicros, shelvedUntilMicros, so);
  }
}
