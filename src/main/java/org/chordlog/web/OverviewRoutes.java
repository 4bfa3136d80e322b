package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus;
import org.chordlog.station.Stations;
import org.chordlog.stats.JobStatistics;
import org.chordlog.store.JobQuery;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.verdict.DamageStatement;
import org.chordlog.verdict.Finding;
import org.chordlog.verdict.PieceVerdict;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.StationVerdict;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** All stations at a glance, and the gauge of each. */
final class OverviewRoutes {
  private static final Logger LOG = LoggerFactory.getLogger(OverviewRoutes.class);
  private static final int OPEN_JOBS_LOOKED_AT = 200;
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

  /** How the station takes its readings. */
  record Measuring(
      CaptureMode mode,
      @JsonPropertyDescription("null without job or bridge, or where the bridge can't reach")
          @Nullable AimView aim) {}

  /** A job to go on with. */
  record NextJob(long id, String name) {}

  /** A station in short. */
  record StationSummary(
      StationView station,
      @Nullable JobView job,
      @JsonPropertyDescription(
              "the newest open job of this station, where it has none or a closed one")
          @Nullable NextJob nextJob,
      @JsonPropertyDescription("the newest reading that counts") @Nullable ReadingView lastReading,
      @Nullable String bridge,
      @JsonPropertyDescription("the most urgent first; empty when all is well")
          List<Finding> findings,
      @JsonPropertyDescription("the station in one statement") Statement verdict,
      @JsonPropertyDescription("whether a reading taken now may be acted on") boolean reliable,
      @JsonPropertyDescription(
              "the last reading, and what to do; null when a newer one was excluded")
          @Nullable Statement piece,
      @JsonPropertyDescription("whether and how to correct the rollers")
          @Nullable CorrectionView correction,
      Measuring measuring) {}

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
    return GaugeView.of(settings, store, Times.micros(Instant.now(clock)));
  }

  private List<StationSummary> overview() {
    return stations.settings().stream()
        .map(this::judged)
        .sorted(Comparator.comparingInt(Ranked::urgency))
        .map(Ranked::view)
        .toList();
  }

  private StationSummary summary(StationSettings settings) {
    return judged(settings).view();
  }

  /** A summary with the urgency that it is sorted by. */
  private record Ranked(StationSummary view, int urgency) {}

  /** A station whose records can't be judged says so, and the page still shows the others. */
  private Ranked judged(StationSettings settings) {
    try {
      return summarised(settings);
    } catch (BadInput | StoreException | IllegalStateException e) {
      LOG.atWarn().addKeyValue("station", settings.name()).setCause(e).log("can't be judged");
      return new Ranked(damaged(settings, String.valueOf(e.getMessage())), 0);
    }
  }

  private StationSummary damaged(StationSettings settings, String why) {
    CaptureMode mode = settings.capture().mode();
    return new StationSummary(
        StationView.of(stations.status(settings.name())),
        null,
        null,
        null,
        null,
        List.of(),
        DamageStatement.of(why),
        false,
        null,
        null,
        new Measuring(mode == null ? CaptureMode.SETTLED : mode, null));
  }

  private Ranked summarised(StationSettings settings) {
    StationStatus status = stations.status(settings.name());
    Job job = store.jobs().activeOn(settings.name()).orElse(null);
    Reading counted = job == null ? null : counted(job);
    ReadingView shown =
        counted == null ? null : new ReadingViews(store).ofCounted(List.of(counted)).get(0);
    Reading last = job == null || counted == null || undone(job, counted) ? null : counted;
    Decision decision = last == null || shown == null ? null : shown.decision();
    GaugeView gauge = gauge(settings);
    boolean inControl = job == null || monitor.read(job.id(), OverviewRoutes::inControl);
    String machine = job == null ? settings.machine() : job.machine(); // a job keeps its own
    StationVerdict verdict =
        new StationJudge(status, gauge)
            .verdict(job, decision, inControl, new MachineJudge(store, monitor).of(machine));
    CorrectionSnapshot rollers =
        job == null
            ? monitor.advice(machine, verdict.doubt())
            : monitor.advice(job, verdict.doubt());
    return new Ranked(
        new StationSummary(
            StationView.of(status),
            job == null ? null : view(job),
            next(settings, job),
            shown,
            gauge.bridge() == null ? null : gauge.bridge().name(),
            verdict.findings(),
            verdict.statement(),
            verdict.reliable(),
            job == null || last == null || decision == null
                ? null
                : new PieceVerdict(last.radius(), job.specification(), decision, verdict)
                    .statement(rollers.advice()),
            job == null
                ? null
                : CorrectionView.of(machine, rollers, MachineAdvice.common(store.readings(), last)),
            measuring(settings, job)),
        verdict.urgency());
  }

  private @Nullable NextJob next(StationSettings settings, @Nullable Job job) {
    if (job != null && job.state() == Job.State.OPEN) {
      return null;
    }
    JobQuery open =
        JobQuery.of(JobQuery.Order.NEWEST, OPEN_JOBS_LOOKED_AT)
            .onMachine(settings.machine())
            .in(Job.State.OPEN);
    return store.jobs().search(open).stream()
        .filter(each -> each.station().equals(settings.name()))
        .findFirst()
        .map(each -> new NextJob(each.id(), each.name()))
        .orElse(null);
  }

  private JobView view(Job job) {
    String lot = store.jobs().materialLot(job.id()).orElse("");
    return JobView.of(job, lot, true, store.readings().countOfJob(job.id()));
  }

  private Measuring measuring(StationSettings settings, @Nullable Job job) {
    AimView aim =
        job == null
            ? null
            : new CurrentSetUp(settings, store.gauges())
                .of(job)
                .map(setUp -> AimView.of(setUp, job.specification()))
                .orElse(null);
    CaptureMode mode = settings.capture().mode();
    return new Measuring(mode == null ? CaptureMode.SETTLED : mode, aim);
  }

  private @Nullable Reading counted(Job job) {
    List<Reading> newest = store.readings().search(RecentRoutes.counted(job.id(), 1));
    return newest.isEmpty() ? null : newest.get(0);
  }

  /** Whether a newer reading was excluded, so that its place is to be measured again. */
  private boolean undone(Job job, Reading counted) {
    return store.readings().search(ReadingQuery.newest(job.id(), 1)).stream()
        .anyMatch(newest -> newest.id() != counted.id());
  }

  private static boolean inControl(JobStatistics statistics) {
    return statistics.characteristics().stream()
        .noneMatch(name -> statistics.control(name).notInControl());
  }
}
