package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/** What a station tells the rest of the service. */
public sealed interface Announcement {
  String station();

  /** The newest value, at most ten a second; depth is null before a zero. */
  record Live(
      String station,
      long wallMicros,
      long valueNm,
      @Nullable Long depthNm,
      @Nullable Double radiusMm,
      Capture.Phase phase)
      implements Announcement {}

  /** The link, or what the indicator says of itself, has changed. */
  record State(String station, StationStatus status) implements Announcement {}

  /** A reading that is committed. */
  record Taken(String station, Reading reading) implements Announcement {}

  /** A capture that was refused. */
  record Refused(String station, CaptureOutcome.Rejected rejection) implements Announcement {}
}
