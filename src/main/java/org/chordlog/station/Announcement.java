package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Zero;
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

  /** The link, what the indicator says of itself, or what is worked on has changed. */
  record State(String station, StationStatus status) implements Announcement {}

  /** A reading that is committed. */
  record Taken(String station, Reading reading) implements Announcement {}

  /** A capture that was refused. */
  record Refused(String station, CaptureOutcome.Rejected rejection) implements Announcement {}

  /** A reading of that job was taken out of the statistics, or put back; kept already. */
  record Excluded(String station, long jobId, Exclusion exclusion) implements Announcement {}

  /** An event of a job that is kept already. */
  record Happened(String station, JobEvent event) implements Announcement {}

  /** A zero that is kept already. */
  record Zeroed(String station, Zero zero) implements Announcement {}
}
