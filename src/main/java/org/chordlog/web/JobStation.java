package org.chordlog.web;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.radius.Faces;
import org.chordlog.radius.Widest;
import org.chordlog.station.StationSettings;
import org.chordlog.store.Gauges;
import org.chordlog.web.http.Faults;
import org.jspecify.annotations.Nullable;

/**
 * What a job's station says of it: the machine, and whether its bridge can reach the radius. {@code
 * machineBefore} is that of the job as it was, null for a new one; a job may keep it.
 */
record JobStation(List<StationSettings> stations, Gauges gauges, @Nullable String machineBefore) {
  private static final String TARGET = "specification.targetMm";

  /** The machine that the station is on; a job there can't be of another one. */
  String machine(Faults faults, String station, @Nullable String asked) {
    Optional<String> own =
        stations.stream()
            .filter(each -> each.name().equals(station))
            .map(StationSettings::machine)
            .findFirst();
    if (own.isEmpty() && !station.isBlank()) {
      faults.add("station", station, "is not known", "a station of the station file");
    }
    if (machineBefore != null && (asked == null || asked.equals(machineBefore))) {
      return machineBefore;
    }
    String machine = own.orElse("");
    if (own.isPresent() && asked != null && !asked.isBlank() && !asked.equals(machine)) {
      faults.add("machine", asked, "is not where that station is", machine);
    }
    return machine;
  }

  /** {@link BadInput} for a radius that the section or the bridge mounted can't have. */
  void refuseImpossible(Job job) {
    Specification asked = job.specification();
    double measured =
        Faces.convertMm(asked.targetMm(), job.section(), asked.face(), job.measuredFace());
    gauges
        .mountedOn(job.station())
        .ifPresent(
            bridge -> {
              refuseTight(asked.targetMm(), measured, bridge.spanMm());
              refuseWide(asked.targetMm(), measured, job.station(), bridge);
            });
  }

  private static void refuseTight(double asked, double measured, double span) {
    if (measured < span / 2) {
      throw new BadInput(
          TARGET,
          asked,
          "is too tight for the bridge on this station",
          Sentence.of("at least half its span of %s on the face measured", Quantity.stated(span)));
    }
  }

  private void refuseWide(double asked, double measured, String station, Bridge bridge) {
    stations.stream()
        .filter(each -> each.name().equals(station))
        .map(each -> Widest.radiusMm(bridge, each.indicator()))
        .filter(widest -> measured > widest)
        .findFirst()
        .ifPresent(
            widest -> {
              throw new BadInput(
                  TARGET,
                  asked,
                  "is too wide for the bridge and the indicator on this station: each piece would"
                      + " look flat",
                  Sentence.of("at most %s on the face measured", Quantity.stated(widest)));
            });
  }
}
