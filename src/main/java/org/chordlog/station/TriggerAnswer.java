package org.chordlog.station;

import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Reading;
import org.chordlog.measure.StudyMeasurement;

/** What came of a request for a reading. */
public sealed interface TriggerAnswer {
  /** A reading, committed. */
  record Taken(Reading reading) implements TriggerAnswer {}

  /** A measurement of the study that is running, committed. */
  record Studied(StudyMeasurement measurement) implements TriggerAnswer {}

  /** None, and why. */
  record Refused(CaptureOutcome.Rejected rejection) implements TriggerAnswer {}
}
