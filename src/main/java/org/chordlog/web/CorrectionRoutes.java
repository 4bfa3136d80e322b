package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.MachineScale;
import org.chordlog.monitor.Monitor;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Whether and how to correct the rollers of a machine, and the scale that this is said on. */
final class CorrectionRoutes {
  private static final String MACHINE = "/api/machines/{machine}";
  private final Store store;
  private final Monitor monitor;
  private final Clock clock;

  CorrectionRoutes(Store store, Monitor monitor, Clock clock) {
    this.store = store;
    this.monitor = monitor;
    this.clock = clock;
  }

  /** A scale by which rollers are set. */
  record ScaleForm(
      @JsonPropertyDescription("for example dial, axis 2") @Nullable String name,
      @JsonPropertyDescription("for example mm, 0.01 mm, turns") @Nullable String unit,
      @JsonPropertyDescription("the smallest move that can be set") @Nullable Double step,
      @JsonPropertyDescription("which way along the scale bends tighter; UNKNOWN if left out")
          MachineScale.@Nullable Tighter tighter,
      @JsonPropertyDescription("play after a change of direction; null if not known")
          @Nullable Double lostMotion) {}

  /** A scale as recorded. */
  record ScaleView(
      String name,
      String unit,
      double step,
      MachineScale.Tighter tighter,
      @Nullable Double lostMotion,
      String at,
      String by) {
    static ScaleView of(MachineScale s) {
      return new ScaleView(
          s.name(),
          s.unit(),
          s.step(),
          s.tighter(),
          s.lostMotion(),
          Times.iso(s.atMicros()),
          s.by());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(MACHINE + "/correction", "Whether and how to correct the rollers")
            .answers(CorrectionView.class, this::correction),
        Route.get(MACHINE + "/scales", "Scales by which the rollers are set")
            .answersList(ScaleView.class, this::scales),
        Route.post(MACHINE + "/scales", "Describes the scale by which the rollers are set")
            .body(ScaleForm.class)
            .creates(ScaleView.class, this::describe));
  }

  private CorrectionView correction(Call call) {
    String machine = call.name("machine");
    return CorrectionView.of(machine, monitor.advice(machine, ""));
  }

  private List<ScaleView> scales(Call call) {
    return store.machines().scales(call.name("machine")).stream().map(ScaleView::of).toList();
  }

  private ScaleView describe(Call call) {
    ScaleForm form = call.body(ScaleForm.class);
    Faults faults = new Faults();
    faults.text("name", form.name());
    faults.text("unit", form.unit());
    faults.needed("step", form.step(), "the smallest move, in that unit");
    faults.refuse();
    return ScaleView.of(
        store
            .machines()
            .add(
                new MachineScale(
                    0,
                    call.name("machine"),
                    Objects.requireNonNull(form.name()).strip(),
                    Objects.requireNonNull(form.unit()).strip(),
                    Objects.requireNonNull(form.step()),
                    Objects.requireNonNullElse(form.tighter(), MachineScale.Tighter.UNKNOWN),
                    form.lostMotion(),
                    Times.micros(Instant.now(clock)),
                    call.by())));
  }
}
