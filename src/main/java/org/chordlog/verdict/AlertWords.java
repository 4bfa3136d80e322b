package org.chordlog.verdict;

import java.util.Locale;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;

/** Words of alerts: of each kind what it is, why it may be, what comes of it and what to do. */
public final class AlertWords {
  /** Where somebody is sent to a machine. */
  public static final String CAUTION =
      "Inspect, measure and adjust only with the rollers stopped and the drive locked out; the"
          + " machine's manual and local rules come first.";

  /** An alert keeps its words; whether the gauge was right may be known only later. */
  private static final String GAUGE_FIRST =
      "If a check or the zero of the gauge is in doubt, put the gauge right first. ";

  private AlertWords() {}

  /** In two or three words. */
  public static String of(AlertKind kind) {
    return switch (kind) {
      case ROLLER_CREEPS -> "Machine creeping";
      case ROLLER_JUMPED -> "Machine jumped";
      case LIMIT_AHEAD -> "Limit near";
      case GAUGE_UNFIT -> "Gauge failed its check";
      case ZERO_OLD -> "Zero is old";
      case CALIBRATION_DUE -> "Calibration due";
      case LINK_LOST -> "No values from the indicator";
      case NETWORK_LOST -> "No values from many stations";
      case READINGS_NOT_KEPT -> "Readings not stored";
      case RECORD_ALTERED -> "Record altered";
      case DISK_LOW -> "Disk nearly full";
      case BACKUP_OLD -> "Backup is old";
      case CERTIFICATE_ENDS -> "Certificate ends soon";
      case EDGE_SILENT -> "Workshop computer silent";
      case EDGE_BEGAN_ANEW -> "Records began anew";
      case EDGE_VERSION_DIFFERS -> "Another version of Chordlog";
      case EDGE_CLOCK_WRONG -> "Clock is wrong";
    };
  }

  /** The same behind the name of the machine, station or computer: "Machine PB-3: creeping". */
  static String behindName(AlertKind kind) {
    return switch (kind) {
      case ROLLER_CREEPS -> "creeping";
      case ROLLER_JUMPED -> "jumped";
      case EDGE_SILENT -> "silent";
      default -> of(kind).substring(0, 1).toLowerCase(Locale.ROOT) + of(kind).substring(1);
    };
  }

  /** What most often makes it so. */
  public static String cause(AlertKind kind) {
    return switch (kind) {
      case ROLLER_CREEPS ->
          "Wear of a roller or bearing, heat, a setting that gives way, or feet of the bridge that wear.";
      case ROLLER_JUMPED ->
          "Something was changed or broke then: rollers, setting, tube, bridge, a bearing.";
      case LIMIT_AHEAD -> "The machine creeps and was not corrected.";
      case GAUGE_UNFIT -> "The bridge, its feet or the indicator changed since the last check.";
      case ZERO_OLD -> "Nobody has set zero for longer than the station's rule allows.";
      case CALIBRATION_DUE -> "The interval of the calibration ends.";
      case LINK_LOST -> "Cable, switch, battery, or the indicator was turned off.";
      case NETWORK_LOST -> "One cause for all: a switch, a gateway, a supply.";
      case READINGS_NOT_KEPT -> "The disk is full, read-only or failing.";
      case RECORD_ALTERED -> "Somebody edited the database, or the disk damaged it.";
      case DISK_LOW -> "Other files fill the disk, or raw samples are stored for too long.";
      case BACKUP_OLD -> "The planned backup did not run, or failed.";
      case CERTIFICATE_ENDS -> "Nobody has put the next certificate in place yet.";
      case EDGE_SILENT ->
          "The computer is switched off, its network is down, or its service does not run.";
      case EDGE_BEGAN_ANEW ->
          "A backup was restored, an older file was put in place by hand, or a copy of the data"
              + " directory runs on a second computer.";
      case EDGE_VERSION_DIFFERS -> "Some computers were updated and others not yet.";
      case EDGE_CLOCK_WRONG -> "No time server sets the clock, or somebody set it by hand.";
    };
  }

  /** What comes of it where nobody acts. */
  public static String consequence(AlertKind kind) {
    return switch (kind) {
      case ROLLER_CREEPS -> "Pieces gradually leave the tolerance, or need ever more corrections.";
      case ROLLER_JUMPED -> "Pieces since then may be out of tolerance.";
      case LIMIT_AHEAD -> "The next pieces are out of tolerance.";
      case GAUGE_UNFIT -> "Radii since the last passed check may be wrong.";
      case ZERO_OLD -> "Radii may be wrong by what the zero has moved.";
      case CALIBRATION_DUE -> "Readings after it are marked as overdue.";
      case LINK_LOST -> "Pieces of the open job are not measured.";
      case NETWORK_LOST -> "Pieces are not measured at any of these stations.";
      case READINGS_NOT_KEPT -> "What is measured now is lost.";
      case RECORD_ALTERED -> "The record no longer proves what was measured.";
      case DISK_LOW -> "Raw samples are no longer stored, and at the end readings neither.";
      case BACKUP_OLD -> "If the disk fails, everything since the last backup is lost.";
      case CERTIFICATE_ENDS -> "Browsers will refuse the pages.";
      case EDGE_SILENT ->
          "Nobody here sees what is measured there. It is kept there, and arrives later.";
      case EDGE_BEGAN_ANEW ->
          "Readings of the former history are no longer on the pages, and with a copy running each"
              + " of the two goes on without the other's readings.";
      case EDGE_VERSION_DIFFERS ->
          "A computer that is newer than the plant can't deliver, and an older one lacks what later"
              + " versions record.";
      case EDGE_CLOCK_WRONG -> "Readings, events and certificates bear wrong times.";
    };
  }

  /** With the caution where somebody is sent to a machine. */
  public static String whatToDo(AlertKind kind) {
    return switch (kind) {
      case ROLLER_CREEPS ->
          GAUGE_FIRST + "Look at rollers, bearings and setting of the machine. " + CAUTION;
      case ROLLER_JUMPED ->
          GAUGE_FIRST
              + "Look for what changed at that piece, and measure the pieces since then. "
              + CAUTION;
      case LIMIT_AHEAD -> "Correct the rollers before the limit, then find out why. " + CAUTION;
      case GAUGE_UNFIT ->
          "Stop using this gauge, calibrate it, and judge the readings since the last passed check"
              + " again.";
      case ZERO_OLD -> "Set zero on the flat.";
      case CALIBRATION_DUE -> "Calibrate the gauge on its masters.";
      case LINK_LOST -> "Check cable, switch and battery of the indicator. " + CAUTION;
      case NETWORK_LOST -> "Look at switches, gateways and supplies that these stations share.";
      case READINGS_NOT_KEPT ->
          "Make room on the disk or put it right; do not trust new readings until then.";
      case RECORD_ALTERED -> "Run chordlog audit, keep the file as it is, and find out who did it.";
      case DISK_LOW -> "Make room on the disk, or store raw samples for fewer days.";
      case BACKUP_OLD -> "Run chordlog backup, and see why the planned one did not.";
      case CERTIFICATE_ENDS -> "Put the next certificate in place of the files.";
      case EDGE_SILENT ->
          "See whether it is switched on and on the network; there, chordlog forward --check says"
              + " what is wrong with the delivery.";
      case EDGE_BEGAN_ANEW ->
          "Find out who restored or copied it. Where a copy runs, stop one of the two. Then"
              + " acknowledge this.";
      case EDGE_VERSION_DIFFERS -> "Update the plant first, then the workshop computers.";
      case EDGE_CLOCK_WRONG -> "Set its clock by a time server.";
    };
  }

  public static String of(AlertState state) {
    return switch (state) {
      case NORMAL -> "Over";
      case UNACKNOWLEDGED -> "Waits for somebody";
      case ACKNOWLEDGED -> "Somebody knows";
      case RETURNED_UNACKNOWLEDGED -> "Went away by itself, still waits for a word";
      case SHELVED -> "Put aside for a while";
      case OUT_OF_SERVICE -> "Under repair";
    };
  }

  public static String of(AlertEvent.What what) {
    return switch (what) {
      case RAISED -> "Raised";
      case AGAIN -> "Raised again";
      case RETURNED -> "Went away";
      case REPLACED -> "Goes on as another alert";
      case ACKNOWLEDGED -> "Acknowledged";
      case SHELVED -> "Put aside";
      case BACK_FROM_SHELF -> "No longer put aside";
      case ASSIGNED -> "Assigned";
      case OUT_OF_SERVICE -> "Taken out of service";
      case BACK_IN_SERVICE -> "Back in service";
    };
  }

  public static String of(AlertPriority priority) {
    return switch (priority) {
      case HIGH -> "Urgent";
      case MEDIUM -> "Soon";
      case LOW -> "Plan it";
    };
  }

  public static String of(AlertAudience audience) {
    return switch (audience) {
      case MAINTENANCE -> "Maintenance";
      case OPERATOR -> "Operator";
      case GAUGE_KEEPER -> "Gauge keeper";
      case QUALITY -> "Quality";
      case ADMINISTRATOR -> "Administrator";
    };
  }

  /** "Machine M1", "Station north", "The service", "Workshop computer hall 2". */
  public static String of(AlertSubject subject) {
    return switch (subject.type()) {
      case MACHINE -> "Machine " + subject.name();
      case STATION -> "Station " + subject.name();
      case SERVICE -> "The service";
      case EDGE -> "Workshop computer " + subject.name();
    };
  }

  static Tone tone(AlertPriority priority) {
    return switch (priority) {
      case HIGH -> Tone.BAD;
      case MEDIUM -> Tone.OPEN;
      case LOW -> Tone.QUIET;
    };
  }
}
