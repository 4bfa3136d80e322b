package org.chordlog.notify.rule;

import java.time.Duration;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertKind;

/**
 * How long something must be so before it is told, and how long it must be gone before that is
 * believed. Judgement, no source. What is judged by pieces asks for two judgements in a row
 * instead; a link's ten minutes are in {@link StationRule}.
 */
final class Delays {
  private Delays() {}

  static long onMicros(AlertKind kind) {
    return micros(
        switch (kind) {
          case NETWORK_LOST, DISK_LOW -> Duration.ofMinutes(1);
          case EDGE_CLOCK_WRONG -> Duration.ofMinutes(2);
          case ROLLER_CREEPS,
              ROLLER_JUMPED,
              LIMIT_AHEAD,
              GAUGE_UNFIT,
              ZERO_OLD,
              CALIBRATION_DUE,
              LINK_LOST,
              READINGS_NOT_KEPT,
              RECORD_ALTERED,
              BACKUP_OLD,
              CERTIFICATE_ENDS,
              EDGE_SILENT,
              EDGE_BEGAN_ANEW,
              EDGE_VERSION_DIFFERS ->
              Duration.ZERO;
        });
  }

  static long offMicros(Alert alert) {
    return alert.status().unsteady()
        ? AlertRule.STEADY_MICROS
        : micros(
            switch (alert.kind()) {
              case LINK_LOST, NETWORK_LOST, EDGE_SILENT -> Duration.ofMinutes(1);
              case DISK_LOW, READINGS_NOT_KEPT, EDGE_CLOCK_WRONG -> Duration.ofMinutes(10);
              case ROLLER_CREEPS,
                  ROLLER_JUMPED,
                  LIMIT_AHEAD,
                  GAUGE_UNFIT,
                  ZERO_OLD,
                  CALIBRATION_DUE,
                  RECORD_ALTERED,
                  BACKUP_OLD,
                  CERTIFICATE_ENDS,
                  EDGE_BEGAN_ANEW,
                  EDGE_VERSION_DIFFERS ->
                  Duration.ZERO;
            });
  }

  private static long micros(Duration duration) {
    return duration.toNanos() / 1_000;
  }
}
