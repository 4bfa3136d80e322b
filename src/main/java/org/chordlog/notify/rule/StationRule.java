package org.chordlog.notify.rule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.rule.StationFacts.FailedCheck;

/** What of the stations' links and gauges somebody must know. */
public final class StationRule {
  public static final Set<AlertKind> LINKS = Set.of(AlertKind.LINK_LOST, AlertKind.NETWORK_LOST);
  public static final Set<AlertKind> GAUGES =
      Set.of(AlertKind.GAUGE_UNFIT, AlertKind.ZERO_OLD, AlertKind.CALIBRATION_DUE);

  /** First told so many days before; again at 3 and 0 days. */
  private static final int CALIBRATION_DAYS = 14;

  private static final long LOST_MICROS = micros(Duration.ofMinutes(10));
  private static final long AT_ONCE_MICROS = micros(Duration.ofSeconds(60));
  private static final int MOST_ALONE = 5;
  private static final double DAY_MICROS = 86_400e6;
  private static final double HOUR_MICROS = 3_600e6;
  private static final double MINUTE_MICROS = 60e6;

  private StationRule() {}

  private static long micros(Duration duration) {
    return duration.toNanos() / 1_000;
  }

  /**
   * Links lost for long while a job is open; more than five that were lost within a minute have one
   * cause and are told as one.
   */
  public static List<Found> links(List<StationFacts> all, long atMicros) {
    List<StationFacts> lost =
        all.stream()
            .filter(each -> each.link().lost())
            .sorted(Comparator.comparingLong(each -> each.link().sinceMicros()))
            .toList();
    List<StationFacts> together = together(lost);
    List<Found> found = new ArrayList<>();
    if (together.stream().anyMatch(StationFacts::working)) {
      found.add(network(together));
    }
    lost.stream()
        .filter(each -> each.working() && !together.contains(each))
        .filter(each -> atMicros - each.link().sinceMicros() >= LOST_MICROS)
        .forEach(each -> found.add(link(each, atMicros)));
    return found;
  }

  /** All of any minute in which more than five were lost; in the order of time. */
  private static List<StationFacts> together(List<StationFacts> lost) {
    List<StationFacts> together = new ArrayList<>();
    for (int i = 0; i + MOST_ALONE < lost.size(); i++) {
      long first = lost.get(i).link().sinceMicros();
      List<StationFacts> minute =
          lost.subList(i, lost.size()).stream()
              .filter(each -> each.link().sinceMicros() - first <= AT_ONCE_MICROS)
              .toList();
      if (minute.size() > MOST_ALONE) {
        minute.stream().filter(each -> !together.contains(each)).forEach(together::add);
      }
    }
    return together;
  }

  private static Found network(List<StationFacts> together) {
    String names =
        together.stream().map(StationFacts::station).sorted().collect(Collectors.joining(", "));
    return new Found(
        AlertKey.service(AlertKind.NETWORK_LOST),
        AlertEvidence.of(Map.of(AlertFigure.STATIONS, (double) together.size()))
            .withDetail(names + "."));
  }

  private static Found link(StationFacts station, long atMicros) {
    double minutes = (atMicros - station.link().sinceMicros()) / MINUTE_MICROS;
    return new Found(
        AlertKey.station(AlertKind.LINK_LOST, station.station()),
        AlertEvidence.of(Map.of(AlertFigure.MINUTES, minutes))
            .withDetail(station.link().message()));
  }

  /** Failed checks, calibrations that end, and zeros too old for an open job. */
  public static List<Found> gauges(List<StationFacts> all, long atMicros) {
    List<Found> found = new ArrayList<>();
    for (StationFacts each : all) {
      FailedCheck failed = each.gauge().failed();
      if (failed != null) {
        found.add(failed(each.station(), failed));
      }
      Long due = each.gauge().calibrationDueMicros();
      double days = due == null ? Double.MAX_VALUE : Math.floor((due - atMicros) / DAY_MICROS);
      if (days <= CALIBRATION_DAYS) {
        found.add(of(each, AlertKind.CALIBRATION_DUE, AlertFigure.DAYS_LEFT, days));
      }
      Long zero = each.gauge().zeroMicros();
      if (each.working() && each.gauge().zeroStale() && zero != null) {
        double hours = (atMicros - zero) / HOUR_MICROS;
        found.add(of(each, AlertKind.ZERO_OLD, AlertFigure.HOURS, hours));
      }
    }
    return found;
  }

  private static Found failed(String station, FailedCheck failed) {
    Map<AlertFigure, Double> figures = new EnumMap<>(AlertFigure.class);
    figures.put(AlertFigure.READINGS_IN_DOUBT, (double) failed.readingsInDoubt());
    Double deviation = failed.deviationMm();
    if (deviation != null) {
      figures.put(AlertFigure.DEVIATION_MM, deviation);
      figures.put(AlertFigure.MASTER_MM, failed.masterMm());
    }
    return new Found(AlertKey.station(AlertKind.GAUGE_UNFIT, station), AlertEvidence.of(figures));
  }

  private static Found of(StationFacts of, AlertKind kind, AlertFigure figure, double value) {
    return new Found(AlertKey.station(kind, of.station()), AlertEvidence.of(Map.of(figure, value)));
  }
}
