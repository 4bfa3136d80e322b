package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus;
import org.chordlog.station.Stations;
import org.chordlog.stats.JobStatistics;
import org.chordlog.store.Store;
import org.chordlog.verdict.Finding;
import org.chordlog.verdict.PieceVerdict;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.StationVerdict;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** All stations at a glance, and the gauge of each. */
final class OverviewRoutes {
  private final Stations stations;
  private final Store store;
  private final Monitor monitor;
  private final Clock clock;

  OverviewRoutes(Stations stations, Store store, Monitor monitor, Clock clock) {
    this.stations = stations;
    this.store = store;
    this.monitor = monitor;
    this.clock = clock;
  }

  /** A station in short. */
  record StationSummary(
      StationView station,
      @Nullable JobView job,
      @Nullable ReadingView lastReading,
      @Nullable String bridge,
      @JsonPropertyDescription("the most urgent first; empty when all is well")
          List<Finding> findings,
      @JsonPropertyDescription("the station in one statement") Statement verdict,
      @JsonPropertyDescription("the last reading, and what to do") @Nullable Statement piece,
      @JsonPropertyDescription("whether and how to correct the rollers")
          @Nullable CorrectionView correction) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/overview", "Stations in short, those that need attention first")
            .answersList(StationSummary.class, call -> overview()),
        Route.get("/api/stations/{station}/overview", "A station in short")
            .answers(StationSummary.class, call -> summary(settings(call))),
        Route.get("/api/stations/{station}/gauge", "The gauge of a station and its fitness")
            .answers(GaugeView.class, call -> gauge(settings(call))));
  }

  private StationSettings settings(Call call) {
    String name = StationRoutes.known(stations, call);
    return stations.settings().stream()
        .filter(s -> s.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private GaugeView gauge(StationSettings settings) {
    return GaugeView.of(settings, store.gauges(), Times.micros(Instant.now(clock)));
  }

  private List<StationSummary> overview() {
    return stations.settings().stream()
        .map(this::summarised)
        .sorted(Comparator.comparingInt(Ranked::urgency))
        .map(Ranked::view)
        .toList();
  }

  private StationSummary summary(StationSettings settings) {
    return summarised(settings).view();
  }

  /** A summary with the urgency that it is sorted by. */
  private record Ranked(StationSummary view, int urgency) {}

  private Ranked summarised(StationSettings settings) {
    StationStatus status = stations.status(settings.name());
    Job job = store.jobs().activeOn(settings.name()).orElse(null);
    Reading last = job == null ? null : last(job);
    GaugeView gauge = gauge(settings);
    boolean inControl = job == null || monitor.read(job.id(), OverviewRoutes::inControl);
    StationVerdict verdict = new StationJudge(status, gauge).verdict(job, last, inControl);
    return new Ranked(
        new StationSummary(
            StationView.of(status),
            job == null ? null : view(job),
            last == null ? null : new ReadingViews(store).of(last),
            gauge.bridge() == null ? null : gauge.bridge().name(),
            verdict.findings(),
            verdict.statement(),
            job == null || last == null ? null : piece(job, last, verdict),
            job == null ? null : correction(settings.machine(), verdict)),
        verdict.urgency());
  }

  private JobView view(Job job) {
    String lot = store.jobs().materialLot(job.id()).orElse("");
    return JobView.of(job, lot, true, store.readings().countOfJob(job.id()));
  }

  private CorrectionView correction(String machine, StationVerdict verdict) {
    return CorrectionView.of(machine, monitor.advice(machine, verdict.doubt()));
  }

  private static Statement piece(Job job, Reading last, StationVerdict verdict) {
    return new PieceVerdict(last.radius(), job.specification(), last.decision(), verdict)
        .statement();
  }

  private @Nullable Reading last(Job job) {
    List<Reading> last = store.readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
    return last.isEmpty() ? null : last.get(0);
  }

  private static boolean inControl(JobStatistics statistics) {
    return statistics.characteristics().stream()
        .noneMatch(name -> statistics.control(name).notInControl());
  }
}
