package org.chordlog.notify.rule;

import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;

/** Something that is so now, and what shows it. */
public record Found(AlertKey key, AlertEvidence evidence) {
  /** Days before a date at which people are told again, after the first time. */
  private static final int[] AGAIN_AT_DAYS = {3, 0};

  Found withDetail(String words) {
    return new Found(key, evidence.withDetail(words));
  }

  /** Whether it is graver than what that alert says, so that people are told again. */
  boolean worseThan(Alert told) {
    return switch (key.kind()) {
      case CALIBRATION_DUE, CERTIFICATE_ENDS -> grade(evidence) > grade(told.evidence());
      case ROLLER_CREEPS ->
          told.withEvidence(evidence).treatedAs() != AlertKind.ROLLER_CREEPS
              && told.treatedAs() == AlertKind.ROLLER_CREEPS;
      case EDGE_BEGAN_ANEW -> histories(evidence) > histories(told.evidence());
      case ROLLER_JUMPED,
          LIMIT_AHEAD,
          GAUGE_UNFIT,
          ZERO_OLD,
          LINK_LOST,
          NETWORK_LOST,
          READINGS_NOT_KEPT,
          RECORD_ALTERED,
          DISK_LOW,
          BACKUP_OLD,
          EDGE_SILENT,
          EDGE_VERSION_DIFFERS,
          EDGE_CLOCK_WRONG ->
          false;
    };
  }

  private static double histories(AlertEvidence evidence) {
    Double known = evidence.figure(AlertFigure.HISTORIES);
    return known == null ? 0 : known;
  }

  private static int grade(AlertEvidence evidence) {
    Double days = evidence.figure(AlertFigure.DAYS_LEFT);
    int grade = 0;
    for (int at : AGAIN_AT_DAYS) {
      grade += days != null && days <= at ? 1 : 0;
    }
    return grade;
  }
}
