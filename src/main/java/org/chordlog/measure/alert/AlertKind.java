package org.chordlog.measure.alert;

import static org.chordlog.measure.alert.AlertAudience.ADMINISTRATOR;
import static org.chordlog.measure.alert.AlertAudience.GAUGE_KEEPER;
import static org.chordlog.measure.alert.AlertAudience.MAINTENANCE;
import static org.chordlog.measure.alert.AlertAudience.OPERATOR;
import static org.chordlog.measure.alert.AlertAudience.QUALITY;
import static org.chordlog.measure.alert.AlertPriority.HIGH;
import static org.chordlog.measure.alert.AlertPriority.LOW;
import static org.chordlog.measure.alert.AlertPriority.MEDIUM;
import static org.chordlog.measure.alert.AlertSubject.Type.EDGE;
import static org.chordlog.measure.alert.AlertSubject.Type.MACHINE;
import static org.chordlog.measure.alert.AlertSubject.Type.SERVICE;
import static org.chordlog.measure.alert.AlertSubject.Type.STATION;

import java.time.Duration;
import java.util.List;

/**
 * What an alert can be about: each with how urgent it is, the time to act, what it is about, and
 * who is told, in the order of escalation. Cause, consequence and what to do are words of {@code
 * verdict}. Priorities and times are judgement, no source. Names are stored.
 */
public enum AlertKind {
  /** The machine's pieces get tighter or wider, piece by piece. */
  ROLLER_CREEPS(MACHINE, MEDIUM, Duration.ofHours(8), MAINTENANCE, OPERATOR),
  /** The machine's pieces are tighter or wider since one piece. */
  ROLLER_JUMPED(MACHINE, HIGH, Duration.ofHours(1), MAINTENANCE, OPERATOR),
  /** A creep reaches a limit soon. */
  LIMIT_AHEAD(MACHINE, HIGH, Duration.ofHours(1), MAINTENANCE, OPERATOR),
  /** The newest check on a master failed: readings since the check before are in doubt. */
  GAUGE_UNFIT(STATION, HIGH, Duration.ofHours(8), GAUGE_KEEPER, QUALITY),
  /** The zero is too old for the readings that are taken. */
  ZERO_OLD(STATION, LOW, Duration.ofHours(8), OPERATOR, GAUGE_KEEPER),
  /** A calibration ends soon, or has ended. */
  CALIBRATION_DUE(STATION, LOW, Duration.ofDays(1), GAUGE_KEEPER, QUALITY),
  /** No values from the indicator while a job is open. */
  LINK_LOST(STATION, MEDIUM, Duration.ofMinutes(10), OPERATOR, MAINTENANCE),
  /** Many stations lost their links at once: one cause. */
  NETWORK_LOST(SERVICE, HIGH, Duration.ofMinutes(10), MAINTENANCE, ADMINISTRATOR),
  READINGS_NOT_KEPT(SERVICE, HIGH, Duration.ofHours(1), ADMINISTRATOR),
  /** The chain of hashes over the records does not hold. */
  RECORD_ALTERED(SERVICE, HIGH, Duration.ofHours(1), ADMINISTRATOR, QUALITY),
  DISK_LOW(SERVICE, MEDIUM, Duration.ofHours(1), ADMINISTRATOR),
  BACKUP_OLD(SERVICE, LOW, Duration.ofDays(1), ADMINISTRATOR),
  CERTIFICATE_ENDS(SERVICE, LOW, Duration.ofDays(1), ADMINISTRATOR),
  /** At a plant: nothing was heard of a workshop computer. */
  EDGE_SILENT(EDGE, MEDIUM, Duration.ofHours(1), ADMINISTRATOR, QUALITY),
  /** At a plant: its records began anew, after a restore or because there is a copy of it. */
  EDGE_BEGAN_ANEW(EDGE, MEDIUM, Duration.ofHours(8), QUALITY, ADMINISTRATOR),
  /** At a plant: its records have another layout than those of the plant. */
  EDGE_VERSION_DIFFERS(EDGE, LOW, Duration.ofDays(1), ADMINISTRATOR),
  /** At a plant: its clock is not that of the plant. */
  EDGE_CLOCK_WRONG(EDGE, LOW, Duration.ofDays(1), ADMINISTRATOR, QUALITY);

  private final AlertSubject.Type about;
  private final AlertPriority priority;
  private final Duration timeToAct;

  @SuppressWarnings("ImmutableEnumChecker") // made by List.of
  private final List<AlertAudience> audiences;

  AlertKind(
      AlertSubject.Type about,
      AlertPriority priority,
      Duration timeToAct,
      AlertAudience... audiences) {
    this.about = about;
    this.priority = priority;
    this.timeToAct = timeToAct;
    this.audiences = List.of(audiences);
  }

  public AlertSubject.Type about() {
    return about;
  }

  public AlertPriority priority() {
    return priority;
  }

  /** From when it is raised. */
  public Duration timeToAct() {
    return timeToAct;
  }

  /** In the order of escalation; at least one. */
  public List<AlertAudience> audiences() {
    return audiences;
  }

  /**
   * Whether somebody must say that he knows even after it went away by itself; the others are over
   * then.
   */
  public boolean latches() {
    return switch (this) {
      case ROLLER_CREEPS,
          ROLLER_JUMPED,
          LIMIT_AHEAD,
          GAUGE_UNFIT,
          READINGS_NOT_KEPT,
          RECORD_ALTERED,
          EDGE_BEGAN_ANEW ->
          true;
      case ZERO_OLD,
          CALIBRATION_DUE,
          LINK_LOST,
          NETWORK_LOST,
          DISK_LOW,
          BACKUP_OLD,
          CERTIFICATE_ENDS,
          EDGE_SILENT,
          EDGE_VERSION_DIFFERS,
          EDGE_CLOCK_WRONG ->
          false;
    };
  }
}
