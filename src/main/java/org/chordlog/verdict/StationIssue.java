package org.chordlog.verdict;

/** What a station needs somebody for, the most urgent first, with what to do about it. */
public enum StationIssue {
  READINGS_LOST(
      Tone.BAD, "Readings could not be stored", "Call the person who looks after the computer."),
  LINK(Tone.BAD, "No values from the indicator", "Check the cable, the switch and the battery."),
  INDICATOR(Tone.BAD, "The indicator reports a fault", "See what it shows."),
  LENGTH(
      Tone.BAD,
      "No length along the feed",
      "Check the encoder and its cable: pieces give no reading until it counts."),
  STREAM_DOUBTFUL(
      Tone.BAD, "The indicator shows what can't be", "Look at the indicator, then set zero."),
  NO_BRIDGE(Tone.BAD, "No bridge chosen", "Choose the bridge."),
  CHECK_FAILED(Tone.BAD, "Last check failed", "Calibrate before you go on."),
  ZERO_OF_OTHER_BRIDGE(Tone.BAD, "The zero belongs to another bridge", "Set zero on the flat."),
  ZERO_MISSING(Tone.BAD, "No zero", "Set zero on the flat."),
  ZERO_DOUBTFUL(Tone.BAD, "Zero in doubt", "Lift the bridge and set zero again, on the flat."),
  ON_MASTERS(Tone.QUIET, "Masters", "The job is suspended while masters are measured."),
  IN_STUDY(Tone.QUIET, "Gauge study", "The study's page says what to measure."),
  JOB_CLOSED(Tone.OPEN, "This job is closed", "Choose the next job."),
  NO_JOB(Tone.OPEN, "No job chosen", "Choose the job."),
  OUT_OF_TOLERANCE(Tone.BAD, "Last piece out of tolerance", ""),
  NOT_IN_CONTROL(Tone.OPEN, "Not in control", "Look at the chart first."),
  MACHINE_MOVED(Tone.OPEN, "Machine not steady", ""),
  ZERO_STALE(Tone.OPEN, "Zero is old", "Set zero on the flat."),
  CALIBRATION_OVERDUE(Tone.OPEN, "Calibration overdue", "Calibrate on a master."),
  TOO_CLOSE_TO_CALL(Tone.OPEN, "Last piece too close to call", "Measure it again."),
  CALIBRATION_MISSING(Tone.OPEN, "Gauge not calibrated", "Calibrate on a master."),
  CALIBRATION_DUE_SOON(Tone.QUIET, "Calibration due soon", "Plan it.");

  private final Tone tone;
  private final String word;
  private final String advice;

  StationIssue(Tone tone, String word, String advice) {
    this.tone = tone;
    this.word = word;
    this.advice = advice;
  }

  /** Said of the station where nothing more is known. */
  public Statement statement() {
    return new Statement(tone, word, "", advice);
  }

  /** Whether a reading taken now must not be acted on. */
  public boolean forbidsActing() {
    return switch (this) {
      case READINGS_LOST,
          LINK,
          INDICATOR,
          STREAM_DOUBTFUL,
          NO_BRIDGE,
          CHECK_FAILED,
          ZERO_OF_OTHER_BRIDGE,
          ZERO_MISSING,
          ZERO_DOUBTFUL ->
          true;
      case LENGTH,
          ON_MASTERS,
          IN_STUDY,
          JOB_CLOSED,
          NO_JOB,
          OUT_OF_TOLERANCE,
          NOT_IN_CONTROL,
          MACHINE_MOVED,
          ZERO_STALE,
          CALIBRATION_OVERDUE,
          TOO_CLOSE_TO_CALL,
          CALIBRATION_MISSING,
          CALIBRATION_DUE_SOON ->
          false;
    };
  }

  /** Whether it is about the last piece rather than the gauge, the link or the job. */
  public boolean ofPiece() {
    return this == OUT_OF_TOLERANCE || this == TOO_CLOSE_TO_CALL;
  }
}
