package org.chordlog.verdict;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.correction.MachineScale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Incident;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Mark;
import org.chordlog.measure.SubgroupRule;

/**
 * The words of the trade for what the program names in capitals; pages, report, CSV and commands
 * take them from here. A new constant does not compile until it has its words.
 */
public final class Words {
  private Words() {}

  /** Of a reading against its limits. */
  public static String of(Decision decision) {
    return switch (decision) {
      case CONFORMS -> "Good";
      case DOES_NOT_CONFORM -> "Out of tolerance";
      case UNDECIDED -> "Too close to call";
      case NO_LIMITS -> "No limits";
    };
  }

  /** A sign that tells decisions apart without colour. */
  public static String sign(Decision decision) {
    return switch (decision) {
      case CONFORMS -> "✓";
      case DOES_NOT_CONFORM -> "✗";
      case UNDECIDED -> "?";
      case NO_LIMITS -> "–";
    };
  }

  /** The face's own name. */
  public static String of(Face face) {
    return face.words();
  }

  /** What the feet of a bridge are. */
  public static String of(FootKind feet) {
    return switch (feet) {
      case POINT -> "points";
      case BALL -> "balls";
      case ACROSS -> "edges or rollers across the piece";
      case ALONG -> "edges along the piece";
    };
  }

  /** Which way the number on the scale of the rollers goes. */
  public static String of(MachineScale.Tighter tighter) {
    return switch (tighter) {
      case UNKNOWN -> "not known";
      case HIGHER -> "a higher number bends tighter";
      case LOWER -> "a lower number bends tighter";
    };
  }

  /** What makes a reading doubtful. */
  public static String of(Mark mark) {
    return switch (mark) {
      case ZERO_MISSING -> "no zero";
      case ZERO_STALE -> "zero too old";
      case CALIBRATION_MISSING -> "gauge not calibrated";
      case CALIBRATION_OVERDUE -> "calibration overdue";
      case CHECK_FAILED -> "after a failed check";
      case CLOCK_DOUBTFUL -> "time in doubt";
      case IMPORTED -> "imported";
      case ZERO_MOVED -> "zero moved";
    };
  }

  /** What happened in a job. */
  public static String of(JobEvent.Kind kind) {
    return switch (kind) {
      case CORRECTION -> "Correction";
      case MATERIAL_LOT -> "New material lot";
      case SET_UP -> "Machine set-up";
      case ZERO -> "Zero set";
      case LIMITS_FROZEN -> "Control limits fixed";
      case LIMITS_RELEASED -> "Control limits recalculated";
      case NOTE -> "Note";
    };
  }

  /** Work on a machine, as its log book has it. */
  public static String of(LogbookEntry.Kind kind) {
    return switch (kind) {
      case ROLLER_CHANGED -> "Roller changed";
      case BEARING_RENEWED -> "Bearing renewed";
      case LUBRICATED -> "Lubricated";
      case SET_STRAIGHT -> "Roller set straight";
      case OTHER -> "Other work";
    };
  }

  /** The same with the roller and what was said of it. */
  public static String of(LogbookEntry.Work work) {
    return Stream.of(of(work.kind()), work.roller(), work.note())
        .filter(each -> !each.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** What went wrong at a station. */
  public static String of(Incident.Kind kind) {
    return switch (kind) {
      case LINK_LOST -> "Indicator lost";
      case SILENT -> "Indicator silent";
      case CLOCK_STEPPED -> "Clock changed";
      case SAMPLES_DROPPED -> "Values not stored";
      case READINGS_DROPPED -> "Readings not stored";
      case UNIT_CHANGED -> "Unit switched";
      case ZERO_MOVED -> "Zero moved";
      case SETTING_CHANGED -> "Indicator setting changed";
      case FROZEN -> "Value frozen";
      case UNREADABLE -> "Values could not be read";
      case OTHER_CHANNEL -> "No values of this channel";
      case PIECE_INTERRUPTED -> "A piece was interrupted";
      case STOOD_STILL -> "Chordlog stood still";
    };
  }

  /** Where the plunger is. */
  public static String of(Capture.Phase phase) {
    return switch (phase) {
      case FREE -> "In free air";
      case MOVING -> "Moving";
      case RESTING -> "At rest – hold still";
      case TAKEN -> "Lift off";
    };
  }

  /** How a depth was taken. */
  public static String of(CaptureMode mode) {
    return switch (mode) {
      case SETTLED -> "at rest";
      case EXTREMUM -> "extreme while rocked";
      case TRIGGER -> "on request";
      case PASSING -> "as it runs through";
    };
  }

  /** How far a time can be trusted. */
  public static String of(ClockState state) {
    return switch (state) {
      case STEADY -> "clock steady";
      case STEPPED -> "clock was changed";
      case BEFORE_BUILD -> "clock not set";
    };
  }

  /** What is one subgroup. */
  public static String of(SubgroupRule rule) {
    return switch (rule.kind()) {
      case CONSECUTIVE -> "groups of " + rule.size() + " consecutive readings at a position";
      case PIECE -> "the positions of a piece";
      case INDIVIDUAL -> "single readings";
    };
  }

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
      case NOT_ZEROED, STALE_ZERO -> "Stand the bridge on the flat and set zero.";
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
