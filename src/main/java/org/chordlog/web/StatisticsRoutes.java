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
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** The statistics of a job: each figure with its interval, method and source. */
final class StatisticsRoutes {
  private final Store store;
  private final Monitor monitor;

  StatisticsRoutes(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
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
    call.unlessKnown(standing.tag() + machine.verdict().pieces());
    return monitor.read(
        job.id(),
        Slices.of(call),
        statistics -> view(job, standing, statistics, scope, machine, call));
  }

  private ChartFacts facts(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    call.unlessKnown(monitor.standing(job).tag());
    return monitor.read(
        job,
        Slices.of(call),
        statistics -> ChartFacts.of(statistics, characteristic(statistics, call)));
  }

  private static StatisticsView view(
      Job job,
      Standing standing,
      JobStatistics statistics,
      Scope scope,
      MachineStatement machine,
      Call call) {
    String characteristic = characteristic(statistics, call);
    Summary summary = statistics.summary(characteristic, scope);
    return new StatisticsView(
        job.id(),
        statistics.characteristics(),
        characteristic,
        scope,
        summary.count(),
        summary.figures().stream().map(FigureView::of).toList(),
        summary.cautions(),
        VerdictsView.of(
            new JobVerdict(summary, statistics.control(characteristic), job.specification()),
            machine),
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
