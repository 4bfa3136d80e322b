package org.chordlog.verdict;

import org.chordlog.capture.CaptureOutcome;

/** Words of a refused reading; a new reason does not compile until it has its words. */
public final class RefusalWords {
  private RefusalWords() {}

  /** What was seen when a reading was refused. */
  public static String of(CaptureOutcome.Reason reason) {
    return switch (reason) {
      case MOVED -> "The bridge moved";
      case VIBRATES -> "The value swings too much";
      case TOO_SHORT -> "Lifted too soon";
      case OUTSIDE_TRAVEL -> "At the end of the indicator's travel";
      case NO_PIECE -> "No piece";
      case WRONG_FACE -> "Wrong face";
      case FLAT -> "Too flat to measure";
      case FAR_FROM_TARGET -> "Far from the job's radius";
      case SETTING_CHANGED -> "The indicator's setting was changed";
      case NOT_ZEROED -> "No zero yet";
      case STALE_ZERO -> "The zero is too old";
      case ZERO_OF_OTHER_BRIDGE -> "The zero belongs to another bridge";
      case GAP -> "The indicator was away for a moment";
      case STUCK -> "The value does not move at all";
      case UNIT_CHANGED -> "The indicator's unit was switched";
      case NO_JOB -> "No job chosen";
      case JOB_CLOSED -> "This job is closed";
      case ON_MASTERS -> "Masters are being measured";
      case STUDY_COMPLETE -> "The study has all its measurements";
      case STUDY_NEXT_DAY -> "This day of the study is complete";
      case NO_BRIDGE -> "No bridge on this station";
      case FREE_AIR -> "The bridge stands on nothing";
      case REPEATED -> "Recorded already";
      case RUNS_THROUGH -> "Measured as it runs through";
      case PIECE_TOO_SHORT -> "The piece is too short";
      case NO_FULL_BEND -> "No length of even bend";
      case PIECES_NOT_TOLD -> "Pieces could not be told apart";
      case LENGTH_DEAD -> "The length stood still";
      case LENGTH_REVERSED -> "The length runs backwards";
      case LENGTH_JUMPED -> "The length jumped";
      case NO_LENGTH -> "No length to rely on";
      case FREE_AIR_UNKNOWN -> "The piece was there before free air was seen";
    };
  }

  /** What to do when a reading was refused. */
  public static String advice(CaptureOutcome.Reason reason) {
    return switch (reason) {
      case MOVED -> "Hold it still until the value is recorded.";
      case VIBRATES -> "Stop what vibrates, or hold it still for longer.";
      case TOO_SHORT -> "Hold it still a little longer.";
      case OUTSIDE_TRAVEL -> "Use a bridge that suits this radius.";
      case NO_PIECE -> "The bridge is on a flat or on a master. Lift it, then go on.";
      case WRONG_FACE -> "Measure the other face: here the bend curves the other way.";
      case FLAT -> "Nothing to do if you were setting zero.";
      case FAR_FROM_TARGET -> "Answer the question: whose piece is it?";
      case SETTING_CHANGED -> "Set direction and unit back on the indicator, then set zero.";
      case NOT_ZEROED, STALE_ZERO, ZERO_OF_OTHER_BRIDGE ->
          "Stand the bridge on the flat and set zero.";
      case GAP -> "Measure again.";
      case STUCK -> "Check that the plunger moves freely.";
      case UNIT_CHANGED -> "Set it back, or go on if that was meant.";
      case NO_JOB -> "Choose the job first.";
      case JOB_CLOSED -> "Choose the next job.";
      case ON_MASTERS -> "Finish the calibration or the check, then go back to the job.";
      case STUDY_COMPLETE -> "Finish the study on its page, then go on with the job.";
      case STUDY_NEXT_DAY -> "Pause the study on its page and go on with it another day.";
      case NO_BRIDGE -> "Choose the bridge first.";
      case FREE_AIR -> "Stand it on the piece.";
      case REPEATED -> "Lift the bridge before the next reading.";
      case RUNS_THROUGH -> "Nothing to do: the reading comes when the piece has left.";
      case PIECE_TOO_SHORT -> "Use a bridge of a shorter span.";
      case NO_FULL_BEND -> "Look at the profile: the bend must stay even for longer than the span.";
      case PIECES_NOT_TOLD ->
          "State the length of a piece and of its straight ends, or leave a gap between pieces.";
      case LENGTH_DEAD -> "Check the measuring wheel, its cable and its pressure.";
      case LENGTH_REVERSED -> "Switch the setting \"reversed\" of the station's feed.";
      case LENGTH_JUMPED -> "Check the measuring wheel and its counter.";
      case NO_LENGTH -> "Set where the length comes from, and the length of a piece.";
      case FREE_AIR_UNKNOWN -> "Nothing to do: the next piece counts.";
    };
  }
}
