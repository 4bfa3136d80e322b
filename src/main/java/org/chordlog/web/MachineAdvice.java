package org.chordlog.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.chordlog.chart.CorrectionTrail;
import org.chordlog.correction.Advice;
import org.chordlog.correction.Aim;
import org.chordlog.correction.AsAdvised;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.Tuning;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.monitor.Monitor;
import org.chordlog.radius.Placing;
import org.chordlog.radius.RadiusModel;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Readings;
import org.chordlog.store.Store;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/**
 * Advice on the rollers of a machine, held back while a gauge that measures its job is in doubt.
 */
record MachineAdvice(Stations stations, Store store, Monitor monitor, Clock clock) {
  CorrectionView of(String machine) {
    List<StationSettings> serving =
        stations.settings().stream().filter(each -> each.machine().equals(machine)).toList();
    String doubt =
        serving.stream().map(this::doubt).filter(each -> !each.isEmpty()).findFirst().orElse("");
    Optional<Job> job =
        serving.stream()
            .flatMap(each -> store.jobs().activeOn(each.name()).stream())
            .filter(each -> each.machine().equals(machine)) // a job keeps its own
            .findFirst();
    return CorrectionView.of(
        machine,
        job.map(each -> monitor.advice(each, doubt))
            .orElseGet(() -> monitor.advice(machine, doubt)),
        common(store.readings(), job.flatMap(this::newest).orElse(null)));
  }

  /** What the filter of that machine saw lately. */
  CorrectionTrail trail(String machine) {
    return CorrectionTrail.of(machine, monitor.advice(machine, ""));
  }

  /** A job's newest pieces as bent and as advised, empty where that can't be told. */
  Optional<AsAdvised> asAdvised(Job job) {
    Specification asked = job.specification();
    if (asked.lowerLimitMm() == null && asked.upperLimitMm() == null) {
      return Optional.empty();
    }
    CorrectionSnapshot now = monitor.advice(job.machine(), "");
    return AsAdvised.of(
        CorrectionTrail.of(job.machine(), now).ofJob(job.id()).points(),
        Aim.of(asked),
        now.learned().scale(),
        Tuning.usual());
  }

  private Optional<Reading> newest(Job job) {
    return store.readings().search(RecentRoutes.counted(job.id(), 1)).stream().findFirst();
  }

  /** A station without a job says nothing of the rollers. */
  private String doubt(StationSettings settings) {
    Optional<Job> job = store.jobs().activeOn(settings.name());
    if (job.isEmpty()) {
      return "";
    }
    GaugeView gauge = GaugeView.of(settings, store, Times.micros(Instant.now(clock)));
    return new StationJudge(stations.status(settings.name()), gauge)
        .verdict(job.get(), null, true, new MachineJudge(store, monitor).of(job.get().machine()))
        .doubt();
  }

  /**
   * What zero, span and permissible error leave open for all pieces alike, in words; null without a
   * radius.
   */
  static @Nullable Sentence common(Readings readings, @Nullable Reading last) {
    Double radius = last == null ? null : last.radius().radiusMm();
    if (last == null || radius == null) {
      return null;
    }
    double all = last.radius().standardUncertaintyPerMm() * radius * radius;
    return placing(readings, last)
        .map(Placing::standardUncertaintyMm)
        .map(own -> Math.sqrt(Math.max(0, all * all - own * own)))
        .map(Advice::commonUncertainty)
        .orElse(null);
  }

  private static Optional<Placing> placing(Readings readings, Reading reading) {
    return readings.setUp(reading.setUpId()).flatMap(setUp -> placing(setUp, reading));
  }

  private static Optional<Placing> placing(SetUp setUp, Reading reading) {
    try {
      return Optional.of(
          RadiusModel.of(setUp)
              .placing(
                  reading.depthNm(),
                  reading.captured().scatterNm(),
                  reading.captured().sampleCount()));
    } catch (BadInput outOfReach) {
      return Optional.empty();
    }
  }
}
