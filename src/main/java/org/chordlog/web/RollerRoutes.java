package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Face;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The rollers of a machine, and which of them makes a ripple along the pieces that ran through. */
final class RollerRoutes {
  private static final String ROLLERS = "/api/machines/{machine}/rollers";

  private final Store store;
  private final RollerWatch watch;
  private final Pictures pictures;
  private final Clock clock;

  RollerRoutes(Store store, RollerWatch watch, Pictures pictures, Clock clock) {
    this.store = store;
    this.watch = watch;
    this.pictures = pictures;
    this.clock = clock;
  }

  /** A roller that the section runs over. */
  record RollerForm(
      @Needed @Nullable String name,
      @JsonPropertyDescription("where it touches the section") @Needed @Nullable Double diameterMm,
      @JsonPropertyDescription("standard uncertainty; 0 if left out")
          @Nullable Double diameterUncertaintyMm,
      @JsonPropertyDescription("the face that it touches: OUTER, INNER") @Needed
          @Nullable Face side,
      @JsonPropertyDescription("whether a motor turns it; false if left out")
          @Nullable Boolean driven) {}

  /** Which roller is meant. */
  record RollerName(@Nullable String name) {}

  List<Route> routes() {
    return List.of(
        Route.get(ROLLERS, "The rollers of a machine, and which of them makes a ripple")
            .answers(RollersView.class, this::rollers),
        Route.get("/api/jobs/{job}/rollers", "The same over the newest pieces of one job alone")
            .answers(RollersView.class, this::ofJob),
        Route.post(Right.MACHINE, ROLLERS, "Records a roller, in place of any other of that name")
            .body(RollerForm.class)
            .creates(RollersView.class, this::record),
        Route.post(Right.MACHINE, ROLLERS + "/removals", "Records that a roller is no longer there")
            .body(RollerName.class)
            .answers(RollersView.class, this::remove),
        ChartOptions.asked(
                Route.get(ROLLERS + "/spectrum", "Ripple of the newest pieces by wavelength"))
            .answers(ChartRoutes.ChartView.class, call -> chart(call, PictureKind.ROLLER_SPECTRUM)),
        ChartOptions.asked(
                Route.get(ROLLERS + "/ripples", "Ripple of each roller from piece to piece"))
            .answers(ChartRoutes.ChartView.class, call -> chart(call, PictureKind.ROLLER_RIPPLES)));
  }

  private RollersView rollers(Call call) {
    return RollersView.of(watch.of(call.name("machine")));
  }

  private RollersView ofJob(Call call) {
    return RollersView.of(watch.of(JobRoutes.find(store.jobs(), call)));
  }

  private RollersView record(Call call) {
    RollerForm form = call.body(RollerForm.class);
    Faults faults = new Faults();
    faults.text("name", form.name());
    if (form.diameterMm() == null) {
      faults.add("diameterMm", "", "is missing", "mm");
    }
    Face side = form.side();
    if (side == null) {
      faults.add("side", "", "is missing", "OUTER, INNER");
    }
    faults.refuse();
    Double uncertainty = form.diameterUncertaintyMm();
    Roller roller =
        new Roller(
            String.valueOf(form.name()).strip(),
            Faults.number(form.diameterMm(), "diameterMm"),
            uncertainty == null ? 0 : uncertainty,
            side == null ? Face.OUTER : side,
            Boolean.TRUE.equals(form.driven()));
    store.machines().add(call.name("machine"), roller, by(call));
    return rollers(call);
  }

  private RollersView remove(Call call) {
    String name = call.body(RollerName.class).name();
    store.machines().removeRoller(call.name("machine"), name == null ? "" : name, by(call));
    return rollers(call);
  }

  private Recorded by(Call call) {
    return new Recorded(Times.micros(Instant.now(clock)), call.by());
  }

  private ChartRoutes.ChartView chart(Call call, PictureKind kind) {
    String machine = call.name("machine");
    LineSnapshot snapshot = RollerCharts.of(watch.of(machine));
    String tag = Integer.toHexString(snapshot.hashCode());
    call.unlessKnown(tag);
    ChartOptions look = ChartOptions.of(call);
    ChartPicture picture =
        pictures.get(
            new Pictures.Key("rollers " + machine, kind, "", look, tag),
            () ->
                kind.draw(look.unit().of(new PieceOfLine.Only(snapshot)))
                    .orElseThrow(
                        () -> Refusal.notFound("piece that ran through on machine", machine)));
    return ChartRoutes.ChartView.of(0, kind, picture);
  }
}
