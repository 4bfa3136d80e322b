package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.Standing;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.PositionEffect;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Store;
import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.verdict.StudiedGauge;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** The statistics of a job: each figure with its interval, method and source. */
final class StatisticsRoutes {
  private final Store store;
  private final Monitor monitor;
  private final StudiedGauges studies;

  StatisticsRoutes(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
    this.studies = new StudiedGauges(store);
  }

  /** The figures of one characteristic; {@code behind} readings are stored but not in them yet. */
  record StatisticsView(
      long jobId,
      List<String> characteristics,
      String characteristic,
      Scope scope,
      long count,
      List<FigureView> figures,
      List<Caution> cautions,
      VerdictsView verdicts,
      List<PositionEffect> positionEffects,
      long lastReadingId,
      long behind) {}

  List<Route> routes() {
    return List.of(
        Slices.asked(Route.get("/api/jobs/{job}/statistics", "Figures of a job, with cautions"))
            .query(
                "characteristic", "string", "a position, or the whole piece; the first if left out")
            .query("scope", "string", "phase (the newest one) or job; phase if left out")
            .answers(StatisticsView.class, this::statistics),
        Slices.asked(
                Route.get("/api/jobs/{job}/chart-facts", "Control limits and signals of a job"))
            .query(
                "characteristic", "string", "a position, or the whole piece; the first if left out")
            .answers(ChartFacts.class, this::facts));
  }

  private StatisticsView statistics(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    Scope scope = call.choice("scope", Scope.class).orElse(Scope.PHASE);
    Standing standing = monitor.standing(job.id());
    MachineStatement machine = new MachineJudge(store, monitor).of(job.machine());
    StudiedGauge studied = studies.of(job).orElse(null);
    String study = "-" + (studied == null ? 0 : studied.hashCode());
    call.unlessKnown(standing.tag() + machine.verdict().pieces() + machine.gauge() + study);
    return monitor.read(
        job.id(),
        Slices.of(call),
        statistics -> view(job, standing, new Asked(statistics, scope, machine, studied), call));
  }

  private ChartFacts facts(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    call.unlessKnown(monitor.standing(job).tag());
    return monitor.read(
        job,
        Slices.of(call),
        statistics -> ChartFacts.of(statistics, characteristic(statistics, call)));
  }

  /** What the figures and verdicts are made from. */
  private record Asked(
      JobStatistics statistics,
      Scope scope,
      MachineStatement machine,
      @Nullable StudiedGauge studied) {}

  private static StatisticsView view(Job job, Standing standing, Asked asked, Call call) {
    JobStatistics statistics = asked.statistics();
    String characteristic = characteristic(statistics, call);
    Summary summary = statistics.summary(characteristic, asked.scope());
    return new StatisticsView(
        job.id(),
        statistics.characteristics(),
        characteristic,
        asked.scope(),
        summary.count(),
        StudiedGauges.told(summary, asked.studied()).figures().stream()
            .map(FigureView::of)
            .toList(),
        summary.cautions(),
        VerdictsView.of(
            new JobVerdict(
                summary, statistics.control(characteristic), job.specification(), asked.studied()),
            asked.machine()),
        statistics.positionEffects(),
        statistics.lastReadingId(),
        standing.behind());
  }

  /** The one asked for, or the first. */
  static String characteristic(JobStatistics statistics, Call call) {
    List<String> known = statistics.characteristics();
    String asked = call.text("characteristic", known.get(0));
    if (!known.contains(asked)) {
      throw new BadInput("characteristic", asked, "is not known", String.join(", ", known));
    }
    return asked;
  }
}
