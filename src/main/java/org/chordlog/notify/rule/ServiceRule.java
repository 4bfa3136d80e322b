package org.chordlog.notify.rule;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;

/** What of the service itself its administrator must know. */
public final class ServiceRule {
  public static final Set<AlertKind> KINDS =
      Set.of(
          AlertKind.READINGS_NOT_KEPT,
          AlertKind.RECORD_ALTERED,
          AlertKind.DISK_LOW,
          AlertKind.BACKUP_OLD,
          AlertKind.CERTIFICATE_ENDS);

  private static final double LEAST_FREE_BYTES = 2e9;
  private static final double BACKUP_HOURS = 48;
  private static final double HOUR_MICROS = 3_600e6;
  private static final long CERTIFICATE_DAYS = 14;

  private ServiceRule() {}

  /** What these facts can tell of: an alert of another kind stays as it is. */
  public static Set<AlertKind> judged(ServiceFacts facts) {
    Set<AlertKind> judged = EnumSet.copyOf(KINDS);
    if (facts.alteredRecords() == null) {
      judged.remove(AlertKind.RECORD_ALTERED);
    }
    return judged;
  }

  public static List<Found> found(ServiceFacts facts, long atMicros) {
    List<Found> found = new ArrayList<>();
    if (!facts.fault().isEmpty() || facts.lostReadings() > 0) {
      found.add(
          of(AlertKind.READINGS_NOT_KEPT, AlertFigure.READINGS, (double) facts.lostReadings())
              .withDetail(facts.fault()));
    }
    List<String> altered = facts.alteredRecords();
    if (altered != null && !altered.isEmpty()) {
      found.add(
          of(AlertKind.RECORD_ALTERED, AlertFigure.FAULTS, altered.size())
              .withDetail("First: " + altered.get(0) + "."));
    }
    if (facts.freeBytes() < LEAST_FREE_BYTES) {
      found.add(of(AlertKind.DISK_LOW, AlertFigure.FREE_BYTES, (double) facts.freeBytes()));
    }
    dates(facts, atMicros, found);
    return found;
  }

  private static void dates(ServiceFacts facts, long atMicros, List<Found> found) {
    Long backup = facts.backupMicros();
    double hours = backup == null ? 0 : (atMicros - backup) / HOUR_MICROS;
    if (hours > BACKUP_HOURS) {
      found.add(of(AlertKind.BACKUP_OLD, AlertFigure.HOURS, hours));
    }
    Long days = facts.certificateDaysLeft();
    if (days != null && days < CERTIFICATE_DAYS) {
      found.add(of(AlertKind.CERTIFICATE_ENDS, AlertFigure.DAYS_LEFT, days));
    }
  }

  private static Found of(AlertKind kind, AlertFigure figure, double value) {
    return new Found(AlertKey.service(kind), AlertEvidence.of(Map.of(figure, value)));
  }
}
