package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Face;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.chordlog.store.Store;
import org.chordlog.verdict.RollerStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
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
      @Nullable String name,
      @JsonPropertyDescription("where it touches the section") @Nullable Double diameterMm,
      @JsonPropertyDescription("standard uncertainty; 0 if left out")
          @Nullable Double diameterUncertaintyMm,
      @JsonPropertyDescription("the face that it touches: OUTER, INNER") @Nullable Face side,
      @JsonPropertyDescription("whether a motor turns it; false if left out")
          @Nullable Boolean driven) {}

  /** Which roller is meant. */
  record RollerName(@Nullable String name) {}

  /** A roller, and what its ripple is as far as it can be seen. */
  record RollerView(
      String name,
      double diameterMm,
      Face side,
      boolean driven,
      @JsonPropertyDescription("of its ripple, along the face that lengths are measured on")
          @Nullable Double wavelengthMm,
      @JsonPropertyDescription("why its ripple can't be seen; null if it can")
          @Nullable Sentence unseen,
      @JsonPropertyDescription("percent of curvature, over the pieces judged together")
          @Nullable Double amplitudePercent,
      @JsonPropertyDescription("coverage factor 2") @Nullable Double uncertaintyPercent,
      @JsonPropertyDescription("that chance alone makes as much") @Nullable Double probability,
      @JsonPropertyDescription("pieces for which it has been above its limit") long aboveFor) {}

  /** The rollers of a machine and the judgement on them. */
  record RollersView(
      Statement statement,
      @JsonPropertyDescription("pieces that ran through and were looked at") int pieces,
      List<RollerView> rollers) {}

  List<Route> routes() {
    return List.of(
        Route.get(ROLLERS, "The rollers of a machine, and which of them makes a ripple")
            .answers(RollersView.class, this::rollers),
        Route.post(ROLLERS, "Records a roller, in place of any other of that name")
            .body(RollerForm.class)
            .creates(RollersView.class, this::record),
        Route.post(ROLLERS + "/removals", "Records that a roller is no longer there")
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
    RollerWatch.Report report = watch.of(call.name("machine"));
    return new RollersView(
        new RollerStatement(report.verdict(), report.trends()).statement(),
        report.pieces(),
        report.rollers().stream().map(roller -> view(roller, report)).toList());
  }

  private static RollerView view(Roller roller, RollerWatch.Report report) {
    RollerVerdict verdict = report.verdict();
    @Nullable RollerSight sight = verdict == null ? null : verdict.sight(roller);
    @Nullable RollerRipple ripple = verdict == null ? null : verdict.ripple(roller);
    @Nullable RollerTrend trend =
        report.trends().stream()
            .filter(each -> each.roller().equals(roller.name()))
            .findFirst()
            .orElse(null);
    boolean other = verdict != null && isAnother(verdict, roller);
    long above = trend == null ? 0 : trend.beyondFor();
    return new RollerView(
        roller.name(),
        roller.diameterMm(),
        roller.side(),
        roller.driven(),
        sight == null ? null : sight.wavelengthMm(),
        sight == null ? null : sight.unseen(),
        ripple == null ? null : amplitude(ripple, other ? trend : null),
        ripple == null ? null : uncertainty(ripple, other ? trend : null),
        ripple == null || other ? null : ripple.probability(),
        above);
  }

  /** What a named roller's ripple leaves in the bands of the others is taken out in the trends. */
  private static boolean isAnother(RollerVerdict verdict, Roller roller) {
    return verdict.finding() instanceof Finding.Named named && !named.roller().equals(roller);
  }

  private static Double amplitude(RollerRipple ripple, @Nullable RollerTrend trend) {
    return trend == null ? ripple.amplitudePercent() : trend.amplitudePercent();
  }

  private static Double uncertainty(RollerRipple ripple, @Nullable RollerTrend trend) {
    return 2 * (trend == null ? ripple.uncertaintyPercent() : trend.uncertaintyPercent());
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
    LineSnapshot snapshot = snapshot(watch.of(machine));
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

  private static LineSnapshot snapshot(RollerWatch.Report report) {
    List<LineSnapshot.Wave> waves =
        report.spectrum().waves().stream()
            .map(each -> new LineSnapshot.Wave(each.wavelengthMm(), each.amplitudePercent()))
            .toList();
    List<LineSnapshot.RollerBand> bands = new ArrayList<>();
    RollerVerdict verdict = report.verdict();
    if (verdict != null) {
      for (RollerSight sight : verdict.sights()) {
        double wave = sight.wavelengthMm();
        bands.add(
            new LineSnapshot.RollerBand(
                sight.roller().name(),
                wave * (1 - RollerSight.SLIP),
                wave * (1 + RollerSight.SLIP)));
      }
    }
    return new LineSnapshot(
        "mm",
        null,
        new LineSnapshot.Spectrum(
            Math.min(RollerWatch.SPECTRUM_PIECES, report.pieces()), waves, bands),
        report.trends().stream().map(RollerRoutes::ripple).toList());
  }

  private static LineSnapshot.Ripple ripple(RollerTrend trend) {
    return new LineSnapshot.Ripple(
        trend.roller(), trend.newest(), trend.limit(), trend.amplitudePercent());
  }
}
