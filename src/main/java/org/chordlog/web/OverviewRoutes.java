package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus;
import org.chordlog.station.Stations;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.store.Store;
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
          List<StationIssue> attention) {}

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
        .map(this::summary)
        .sorted(Comparator.comparingInt(OverviewRoutes::urgency))
        .toList();
  }

  private static int urgency(StationSummary summary) {
    return summary.attention().stream()
        .mapToInt(StationIssue::ordinal)
        .min()
        .orElse(StationIssue.values().length);
  }

  private StationSummary summary(StationSettings settings) {
    StationStatus status = stations.status(settings.name());
    Job job = store.jobs().activeOn(settings.name()).orElse(null);
    Reading last = job == null ? null : last(job);
    GaugeView gauge = gauge(settings);
    List<StationIssue> attention = new ArrayList<>(gauge.attention());
    ofStatus(status, attention);
    ofJob(job, last, attention);
    attention.sort(Comparator.naturalOrder());
    return new StationSummary(
        StationView.of(status),
        job == null ? null : JobView.of(job, true, store.readings().countOfJob(job.id())),
        last == null ? null : ReadingView.of(last),
        gauge.bridge() == null ? null : gauge.bridge().name(),
        attention);
  }

  private @Nullable Reading last(Job job) {
    List<Reading> last = store.readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
    return last.isEmpty() ? null : last.get(0);
  }

  private static void ofStatus(StationStatus status, List<StationIssue> attention) {
    if (status.counts().droppedReadings() > 0) {
      attention.add(StationIssue.READINGS_LOST);
    }
    if (status.link() != StationStatus.LinkState.OPEN) {
      attention.add(StationIssue.LINK);
    } else if (status.indicatorState() != null) {
      attention.add(StationIssue.INDICATOR);
    }
  }

  private void ofJob(@Nullable Job job, @Nullable Reading last, List<StationIssue> attention) {
    if (job == null) {
      attention.add(StationIssue.NO_JOB);
      return;
    }
    if (last != null && last.decision() == Decision.DOES_NOT_CONFORM) {
      attention.add(StationIssue.DOES_NOT_CONFORM);
    } else if (last != null && last.decision() == Decision.UNDECIDED) {
      attention.add(StationIssue.UNDECIDED);
    }
    if (monitor.read(job.id(), OverviewRoutes::signalled)) {
      attention.add(StationIssue.OUT_OF_CONTROL);
    }
  }

  /** Whether the newest point of any position breaks a run test. */
  private static boolean signalled(JobStatistics statistics) {
    return statistics.characteristics().stream()
        .flatMap(
            name ->
                statistics.kinds(name).stream()
                    .limit(1)
                    .map(kind -> statistics.chart(name, kind).points()))
        .filter(points -> !points.isEmpty())
        .map(points -> points.get(points.size() - 1))
        .map(ChartPoint::signals)
        .anyMatch(signals -> !signals.isEmpty());
  }
}
