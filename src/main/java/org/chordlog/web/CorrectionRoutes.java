package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.CorrectionTrail;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.correction.GainPrior;
import org.chordlog.measure.Job;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.RollerScale;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Whether and how to correct the rollers of a machine, and the scale that this is said on. */
final class CorrectionRoutes {
  /** Relative standard uncertainty of what people say a unit does; no source. */
  private static final double STATED = 0.3;

  private static final String MACHINE = "/api/machines/{machine}";
  private final Store store;
  private final MachineAdvice advice;
  private final Pictures pictures;
  private final Clock clock;

  CorrectionRoutes(Store store, MachineAdvice advice, Pictures pictures, Clock clock) {
    this.store = store;
    this.advice = advice;
    this.pictures = pictures;
    this.clock = clock;
  }

  /** A scale by which rollers are set. */
  record ScaleForm(
      @JsonPropertyDescription("for example dial, axis 2") @Needed @Nullable String name,
      @JsonPropertyDescription("for example mm, 0.01 mm, turns") @Needed @Nullable String unit,
      @JsonPropertyDescription("the smallest move that can be set; null if not known")
          @Nullable Double step,
      @JsonPropertyDescription("which way along the scale bends tighter; UNKNOWN if left out")
          RollerScale.@Nullable Tighter tighter,
      @JsonPropertyDescription("play after a change of direction; null if not known")
          @Nullable Double lostMotion,
      @JsonPropertyDescription(
              "change of radius for one unit, mm, negative where a higher number is tighter; null"
                  + " if not known")
          @Nullable Double radiusChangeMm,
      @JsonPropertyDescription("the radius that this change is known at, mm")
          @Nullable Double atRadiusMm) {}

  /** A scale as recorded. */
  record ScaleView(
      String name,
      String unit,
      @Nullable Double step,
      RollerScale.Tighter tighter,
      @Nullable Double lostMotion,
      String at,
      String by) {
    static ScaleView of(RollerScale s) {
      return new ScaleView(
          s.name(),
          s.unit(),
          s.motion().step(),
          s.motion().tighter(),
          s.motion().lostMotion(),
          Times.iso(s.atMicros()),
          s.by());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(MACHINE + "/correction", "Whether and how to correct the rollers")
            .answers(CorrectionView.class, this::correction),
        ChartOptions.asked(
                Route.get(MACHINE + "/correction/chart", "Level, corrections and what they did"))
            .query("job", "integer", "only that job's part; left out: the newest pieces of all")
            .answers(ChartRoutes.ChartView.class, this::chart),
        Route.get("/api/jobs/{job}/as-advised", "Pieces as bent, and had each advice been followed")
            .answers(AsAdvisedView.class, this::asAdvised),
        Route.get(MACHINE + "/scales", "Scales by which the rollers are set")
            .answersList(ScaleView.class, this::scales),
        Route.post(
                Right.MACHINE,
                MACHINE + "/scales",
                "Describes the scale by which the rollers are set")
            .body(ScaleForm.class)
            .creates(ScaleView.class, this::describe));
  }

  private CorrectionView correction(Call call) {
    return advice.of(call.name("machine"));
  }

  private ChartRoutes.ChartView chart(Call call) {
    String machine = call.name("machine");
    long job = call.query("job", 0, 0, Long.MAX_VALUE);
    CorrectionTrail all = advice.trail(machine);
    CorrectionTrail trail = job == 0 ? all : all.ofJob(job);
    if (!trail.measured()) {
      throw Refusal.notFound("piece with advice", job == 0 ? machine : "job " + job);
    }
    String tag = Integer.toHexString(trail.hashCode());
    call.unlessKnown(tag);
    ChartOptions look = ChartOptions.of(call);
    Pictures.Key key =
        new Pictures.Key("corrections " + machine, PictureKind.CORRECTIONS, "", look, tag);
    ChartPicture picture = pictures.get(key, () -> drawing(trail, look));
    return ChartRoutes.ChartView.of(job, PictureKind.CORRECTIONS, picture);
  }

  private static Drawing drawing(CorrectionTrail trail, ChartOptions look) {
    return PictureKind.CORRECTIONS.draw(look.unit().of(new CorrectionCharts(trail))).orElseThrow();
  }

  private AsAdvisedView asAdvised(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    return AsAdvisedView.of(
        advice.trail(job.machine()).ofJob(job.id()).pieces(), advice.asAdvised(job).orElse(null));
  }

  private List<ScaleView> scales(Call call) {
    return store.machines().scales(call.name("machine")).stream().map(ScaleView::of).toList();
  }

  private ScaleView describe(Call call) {
    ScaleForm form = call.body(ScaleForm.class);
    Faults faults = new Faults();
    faults.text("name", form.name());
    faults.text("unit", form.unit());
    stated(form, faults);
    faults.refuse();
    RollerScale scale =
        new RollerScale(
            0,
            call.name("machine"),
            Objects.requireNonNull(form.name()).strip(),
            Objects.requireNonNull(form.unit()).strip(),
            motion(form),
            gain(form),
            new Recorded(Times.micros(Instant.now(clock)), call.by()));
    return ScaleView.of(store.machines().add(scale));
  }

  private static void stated(ScaleForm form, Faults faults) {
    Double change = form.radiusChangeMm();
    Double at = form.atRadiusMm();
    if ((change == null) != (at == null)) {
      faults.add(
          change == null ? "radiusChangeMm" : "atRadiusMm", "", "lacks its pair", "both or none");
    }
    if (at != null && !(at > 0)) {
      faults.add("atRadiusMm", at, "is no radius", "above 0");
    }
    if (change != null && (change == 0 || contradicts(form.tighter(), change))) {
      faults.add(
          "radiusChangeMm",
          change,
          change == 0 ? "changes nothing" : "is the other way than tighter says",
          "negative where a higher number is tighter, else positive");
    }
  }

  private static boolean contradicts(RollerScale.@Nullable Tighter tighter, double change) {
    return (tighter == RollerScale.Tighter.HIGHER && change > 0)
        || (tighter == RollerScale.Tighter.LOWER && change < 0);
  }

  private static RollerScale.Motion motion(ScaleForm form) {
    return new RollerScale.Motion(
        Objects.requireNonNullElse(form.tighter(), RollerScale.Tighter.UNKNOWN),
        form.step(),
        form.lostMotion(),
        null);
  }

  private static RollerScale.@Nullable Gain gain(ScaleForm form) {
    Double change = form.radiusChangeMm();
    Double at = form.atRadiusMm();
    if (change == null || at == null) {
      return null;
    }
    GainPrior prior = GainPrior.ofRadiusChange(change, at, STATED);
    return new RollerScale.Gain(prior.perMmPerUnit(), prior.standardUncertainty());
  }
}
