package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Optional;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.station.Stations;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.drift.DriftSnapshot;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Machines over their jobs: verdict, deviation of each job, picture. */
final class MachineRoutes {
  private static final int MOST_JOBS = 50;
  private static final int MOST_WORK = 100;

  private final Store store;
  private final Monitor monitor;
  private final Pictures pictures;
  private final MachineNames machines;
  private final MachineJudge judge;
  private final MachineViews views;

  MachineRoutes(
      Store store, Monitor monitor, Pictures pictures, Stations stations, RollerWatch watch) {
    this.store = store;
    this.monitor = monitor;
    this.pictures = pictures;
    machines = new MachineNames(store, stations);
    judge = new MachineJudge(store, monitor);
    views = new MachineViews(store, monitor, machines, watch);
  }

  /** How far the mean of a job is from its target. */
  record JobDeviation(
      long jobId,
      String name,
      String openedAt,
      Job.State state,
      long readings,
      double targetMm,
      @Nullable Double meanMm,
      @JsonPropertyDescription("of curvature, %; above 0: bent tighter than asked")
          @Nullable Double deviationPercent,
      @JsonPropertyDescription("95 %") @Nullable Double lowerPercent,
      @JsonPropertyDescription("95 %") @Nullable Double upperPercent) {}

  List<Route> routes() {
    String one = "/api/machines/{machine}";
    return List.of(
        Route.get("/api/machines", "Machines, those that need attention first")
            .answersList(MachineView.class, call -> views.list()),
        Route.get(one, "A machine")
            .answers(MachineView.class, call -> views.of(machines.known(call))),
        Route.get(one + "/jobs", "How far each job lay from its target, the newest first")
            .query("limit", "integer", "1 to " + MOST_JOBS + ", 20 if left out")
            .answersList(JobDeviation.class, this::jobs),
        ChartOptions.asked(Route.get(one + "/chart", "Deviations of a machine, trend and forecast"))
            .answers(ChartRoutes.ChartView.class, this::chart));
  }

  private List<Job> newest(String machine, int limit) {
    return store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, limit).onMachine(machine));
  }

  private List<JobDeviation> jobs(Call call) {
    int limit = (int) call.query("limit", 20, 1, MOST_JOBS);
    return newest(machines.known(call), limit).stream().map(this::deviation).toList();
  }

  private JobDeviation deviation(Job job) {
    Optional<Figure> mean =
        monitor.read(
            job.id(),
            statistics ->
                statistics.summary(statistics.characteristics().get(0), Scope.JOB).figure("mean"));
    double target = job.specification().targetMm();
    return new JobDeviation(
        job.id(),
        job.name(),
        Times.iso(job.openedAtMicros()),
        job.state(),
        store.readings().countOfJob(job.id()),
        target,
        mean.map(Figure::value).orElse(null),
        percent(target, mean.map(Figure::value)),
        percent(target, mean.map(Figure::upper)),
        percent(target, mean.map(Figure::lower)));
  }

  /** A larger radius is a smaller curvature. */
  private static @Nullable Double percent(double target, Optional<Double> radius) {
    return radius.map(r -> 100 * (target / r - 1)).orElse(null);
  }

  private ChartRoutes.ChartView chart(Call call) {
    String machine = machines.known(call);
    Double tolerance = judge.tolerance(machine);
    DriftSnapshot drift =
        MachineMarks.on(
            monitor.readMachine(machine, statistics -> statistics.drift(machine, tolerance)),
            store.jobs().eventsOfMachine(machine),
            store.logbooks().ofMachine(machine, Long.MAX_VALUE, MOST_WORK),
            newest(machine, MOST_JOBS),
            store.readings());
    String tag = Integer.toHexString(drift.hashCode());
    call.unlessKnown(tag);
    Pictures.Key key =
        new Pictures.Key("machine " + machine, PictureKind.DRIFT, "", ChartOptions.of(call), tag);
    ChartPicture picture = pictures.get(key, () -> drawing(drift));
    return ChartRoutes.ChartView.of(0, PictureKind.DRIFT, picture);
  }

  private static Drawing drawing(DriftSnapshot drift) {
    ChartSource source = new DriftOnly(drift);
    return PictureKind.DRIFT.draw(source).orElseThrow();
  }

  /** A source with nothing else. */
  private record DriftOnly(DriftSnapshot snapshot) implements ChartSource {
    @Override
    public Optional<ChartSnapshot> chart(ChartKind kind) {
      return Optional.empty();
    }

    @Override
    public Optional<DriftSnapshot> drift() {
      return Optional.of(snapshot);
    }
  }
}
