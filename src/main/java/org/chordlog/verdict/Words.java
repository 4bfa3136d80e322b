package org.chordlog.verdict;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.capture.Capture;
import org.chordlog.correction.MachineScale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Incident;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Plan;
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
      case ZERO_OF_OTHER_BRIDGE -> "zero of another bridge";
      case ZERO_DOUBTFUL -> "zero in doubt";
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
      case BRIDGE -> "Bridge changed";
    };
  }

  /** The same where there is little room, as in a picture. */
  public static String label(JobEvent.Kind kind) {
    return switch (kind) {
      case MATERIAL_LOT -> "New lot";
      case SET_UP -> "Set-up";
      case ZERO -> "Zero";
      case LIMITS_FROZEN -> "Limits fixed";
      case LIMITS_RELEASED -> "Limits recalculated";
      case CORRECTION, NOTE, BRIDGE -> of(kind);
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
  public static String of(SubgroupRule.Kind kind) {
    return switch (kind) {
      case CONSECUTIVE -> "consecutive readings at a position";
      case PIECE -> "all positions of a piece";
      case INDIVIDUAL -> "single readings";
    };
  }

  /** Where a piece is measured, and what is one subgroup. */
  public static String of(Plan plan) {
    SubgroupRule rule = plan.subgroups();
    String size = rule.kind() == SubgroupRule.Kind.CONSECUTIVE ? rule.size() + " " : "";
    return "at "
        + String.join(", ", plan.positions())
        + "; a subgroup is "
        + size
        + of(rule.kind());
  }

  /** What of a piece must lie within its limits. */
  public static String of(DecideBy by) {
    return switch (by) {
      case MEAN -> "its mean";
      case EVERYWHERE -> "each place of it";
      case BOTH -> "its mean and each place of it";
    };
  }
}
