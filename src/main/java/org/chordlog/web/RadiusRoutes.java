package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.radius.Budget;
import org.chordlog.radius.MonteCarlo;
import org.chordlog.radius.MonteCarloResult;
import org.chordlog.radius.RadiusModel;
import org.chordlog.radius.SpanAdvice;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Radius and uncertainty for a depth, and which bridge to use. */
final class RadiusRoutes {
  private static final int MOST_TRIALS = 200_000;
  private final Store store;
  private final Stations stations;

  RadiusRoutes(Store store, Stations stations) {
    this.store = store;
    this.stations = stations;
  }

  /** The radius that a depth gives with what is mounted now, and its budget. */
  record RadiusView(
      double depthMm,
      @JsonPropertyDescription("null for a flat") @Nullable Double radiusMm,
      double lowerMm,
      @JsonPropertyDescription("null when open towards flat") @Nullable Double upperMm,
      double coverageFactor,
      Decision decision,
      Budget budget) {}

  /** JCGM 101: the drawn interval, and how far its ends are from the formula's. */
  record MonteCarloView(
      int trials,
      long seed,
      double lowerMm,
      @JsonPropertyDescription("null when open towards flat") @Nullable Double upperMm,
      @JsonPropertyDescription("the larger of both, in standard uncertainties") double endsApart,
      @JsonPropertyDescription("to one digit of u (JCGM 101, 8.1)") boolean confirmed) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/readings/{reading}/budget", "Uncertainty budget of a reading")
            .answers(Budget.class, this::budget),
        Route.get(
                "/api/readings/{reading}/monte-carlo", "The formula checked by drawing its inputs")
            .query("trials", "integer", "10000 to " + MOST_TRIALS + ", 100000 if left out")
            .query("seed", "integer", "1 if left out; the same seed gives the same figures")
            .answers(MonteCarloView.class, this::monteCarlo),
        Route.get("/api/stations/{station}/radius", "Radius for a depth, as the station stands")
            .query("depthMm", "number", "relative to the zero, positive on a convex face")
            .answers(RadiusView.class, this::radius),
        Route.get("/api/jobs/{job}/span-advice", "Which bridge in use suits a job best")
            .query("pieceLengthMm", "number", "bent length of the piece, no bound if left out")
            .answersList(SpanOptionView.class, this::advice));
  }

  private Budget budget(Call call) {
    Reading r = reading(call);
    return RadiusModel.of(setUpOf(r))
        .budget(r.depthNm(), r.captured().scatterNm(), r.captured().sampleCount());
  }

  private Reading reading(Call call) {
    long id = call.id("reading");
    return store.readings().find(id).orElseThrow(() -> Refusal.notFound("reading", id));
  }

  private SetUp setUpOf(Reading reading) {
    long id = reading.setUpId();
    return store.readings().setUp(id).orElseThrow(() -> Refusal.notFound("set-up", id));
  }

  private MonteCarloView monteCarlo(Call call) {
    Reading r = reading(call);
    RadiusModel model = RadiusModel.of(setUpOf(r));
    int trials = (int) call.query("trials", 100_000, MonteCarlo.LEAST_TRIALS, MOST_TRIALS);
    long seed = call.query("seed", 1, 0, Long.MAX_VALUE);
    MonteCarloResult drawn =
        MonteCarlo.run(
            model, r.depthNm(), r.captured().scatterNm(), r.captured().sampleCount(), trials, seed);
    return new MonteCarloView(
        trials,
        seed,
        drawn.lowerMm(),
        drawn.upperMm(),
        drawn.endsApart(r.radius()),
        drawn.confirms(r.radius(), 1));
  }

  private RadiusView radius(Call call) {
    String station = StationRoutes.known(stations, call);
    double depthMm = call.number("depthMm");
    Length.possible("depthMm", depthMm, depthMm);
    Job job =
        store
            .jobs()
            .activeOn(station)
            .orElseThrow(() -> Refusal.conflict("No job is selected on " + station + "."));
    RadiusModel model = RadiusModel.of(setUp(station, job));
    RadiusEstimate estimate = model.estimate(Length.nm(depthMm), 0, 1);
    return new RadiusView(
        depthMm,
        estimate.radiusMm(),
        estimate.lowerMm(),
        estimate.upperMm(),
        estimate.coverageFactor(),
        model.decide(estimate, job.specification()),
        model.budget(Length.nm(depthMm), 0, 1));
  }

  private SetUp setUp(String station, Job job) {
    return new CurrentSetUp(settings(station), store.gauges())
        .of(job)
        .orElseThrow(() -> Refusal.conflict("No bridge is mounted on " + station + "."));
  }

  private StationSettings settings(String station) {
    return stations.settings().stream()
        .filter(each -> each.name().equals(station))
        .findFirst()
        .orElseThrow(() -> Refusal.notFound("station", station));
  }

  private List<SpanOptionView> advice(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    Specification wanted = job.specification();
    SpanAdvice advice =
        new SpanAdvice(
            settings(job.station()).indicator(),
            job.section(),
            job.measuredFace(),
            wanted.face(),
            wanted.targetMm(),
            tolerance(wanted),
            call.optionalNumber("pieceLengthMm").orElse(null));
    return advice.of(store.gauges().bridges()).stream().map(SpanOptionView::of).toList();
  }

  /** The nearer limit; advice for a job without limits is not possible. */
  private static double tolerance(Specification wanted) {
    Double lower = wanted.lowerLimitMm();
    Double upper = wanted.upperLimitMm();
    double below = lower == null ? Double.POSITIVE_INFINITY : wanted.targetMm() - lower;
    double above = upper == null ? Double.POSITIVE_INFINITY : upper - wanted.targetMm();
    double nearer = Math.min(below, above);
    if (Double.isInfinite(nearer)) {
      throw Refusal.conflict("The job has no limits, so no bridge can be judged.");
    }
    return nearer;
  }
}
