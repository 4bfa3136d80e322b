package org.chordlog.decode;

import org.chordlog.measure.LengthUnit;

/** What a decoder makes of its bytes. {@code raw} is the frame as sent. */
public sealed interface Decoded {
  long monotonicNanos();

  byte[] raw();

  /** A value: whole nanometres as shown, the unit it came in, its channel, and the button flag. */
  @SuppressWarnings("ArrayRecordComponent")
  record Value(
      long monotonicNanos, byte[] raw, long valueNm, LengthUnit unit, int channel, boolean button)
      implements Decoded {}

  /** The indicator says that it has no value to give, and why, in its own {@code text}. */
  @SuppressWarnings("ArrayRecordComponent")
  record Status(long monotonicNanos, byte[] raw, Kind kind, String text) implements Decoded {
    /** States an indicator may send instead of a number. */
    public enum Kind {
      OVER_RANGE,
      UNDER_RANGE,
      LOW_BATTERY,
      ERROR,
      UNSTABLE
    }
  }

  /** A frame that was refused; it never becomes a sample. */
  @SuppressWarnings("ArrayRecordComponent")
  record Damaged(long monotonicNanos, byte[] raw, String reason) implements Decoded {}
}
