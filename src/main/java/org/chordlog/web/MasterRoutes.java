package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Length;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.CalibrationAdvice;
import org.chordlog.radius.CalibrationFit;
import org.chordlog.radius.MasterReading;
import org.chordlog.station.MasterActions;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Calibrating and checking a station on masters, step by step. */
final class MasterRoutes {
  private static final String ONE = "/api/stations/{station}";
  private final Stations stations;
  private final Clock clock;

  MasterRoutes(Stations stations, Clock clock) {
    this.stations = stations;
    this.clock = clock;
  }

  /** The master that the bridge stands on. */
  record MasterChoice(long masterId) {}

  /** When the calibration is due again, ISO 8601 UTC. */
  record Due(@JsonPropertyDescription(Times.AT) @Needed @Nullable String dueAt) {}

  /** The master, and how far the radius may be from it; null: as stated with the master. */
  record CheckForm(@Needed @Nullable Long masterId, @Nullable Double limitMm) {}

  /** A reading on a master; the residual is observed less fitted depth. */
  record OnMaster(
      long masterId,
      String master,
      Face face,
      double radiusMm,
      double depthMm,
      double scatterMm,
      int sampleCount,
      @JsonPropertyDescription("null while there is no fit") @Nullable Double residualMm) {
    static OnMaster of(MasterReading r, @Nullable Double residualMm) {
      return new OnMaster(
          r.master().id(),
          r.master().name(),
          r.master().face(),
          r.master().radiusMm(),
          Length.mm(r.depthNm()),
          Length.mm(r.scatterNm()),
          r.sampleCount(),
          residualMm);
    }
  }

  /** What was read so far, and the fit of it; without one, why. */
  record CalibrationRun(
      List<OnMaster> readings,
      @Nullable CalibrationFit fit,
      @Nullable Sentence whyNoFit,
      @JsonPropertyDescription("what the fit does to the uncertainty, why, and what would lower it")
          @Nullable CalibrationAdvice advice) {}

  List<Route> routes() {
    return List.of(
        Route.get(ONE + "/calibration-run", "Readings on masters so far, with their fit")
            .answers(CalibrationRun.class, call -> run(at(call))),
        Route.post(
                Right.GAUGE,
                ONE + "/calibration-run/readings",
                "Reads the master the bridge stands on")
            .body(MasterChoice.class)
            .creates(CalibrationRun.class, this::read),
        Route.delete(
                Right.GAUGE, ONE + "/calibration-run", "Forgets the readings on masters so far")
            .does(call -> at(call).forget()),
        Route.post(
                Right.GAUGE,
                ONE + "/calibrations",
                "Keeps the fit as the calibration of the bridge mounted")
            .body(Due.class)
            .creates(CalibrationView.class, this::keep),
        Route.post(Right.GAUGE, ONE + "/checks", "Interim check on the master the bridge stands on")
            .body(CheckForm.class)
            .creates(GaugeRoutes.CheckView.class, this::check));
  }

  private MasterActions at(Call call) {
    return stations.mastersAt(StationRoutes.known(stations, call));
  }

  private CalibrationRun read(Call call) {
    MasterActions masters = at(call);
    var unused = masters.read(call.body(MasterChoice.class).masterId(), call.by());
    return run(masters);
  }

  private static CalibrationRun run(MasterActions masters) {
    List<MasterReading> readings = masters.readings();
    try {
      CalibrationFit fit = masters.fit();
      List<OnMaster> told =
          IntStream.range(0, readings.size())
              .mapToObj(i -> OnMaster.of(readings.get(i), fit.residualsMm().get(i)))
              .toList();
      return new CalibrationRun(told, fit, null, masters.advice());
    } catch (BadInput notYet) {
      List<OnMaster> told = readings.stream().map(each -> OnMaster.of(each, null)).toList();
      return new CalibrationRun(told, null, notYet.said(), null);
    }
  }

  private CalibrationView keep(Call call) {
    MasterActions masters = at(call);
    String dueAt = call.body(Due.class).dueAt();
    long micros = Times.read("dueAt", Objects.requireNonNullElse(dueAt, ""));
    if (micros <= Times.micros(Instant.now(clock))) {
      throw new BadInput(
          "dueAt", String.valueOf(dueAt), "is not in the future", "a time after now");
    }
    return CalibrationView.of(masters.keep(micros, call.by()));
  }

  private GaugeRoutes.CheckView check(Call call) {
    MasterActions masters = at(call);
    CheckForm form = call.body(CheckForm.class);
    Faults faults = new Faults();
    faults.needed("masterId", form.masterId(), "a master of the list");
    faults.refuse();
    long master = Objects.requireNonNull(form.masterId());
    Double own = masters.checkLimitMm(master);
    Double limit = form.limitMm() == null ? own : form.limitMm();
    faults.needed("limitMm", limit, "a number above 0");
    faults.refuse();
    return GaugeRoutes.CheckView.of(
        masters.check(master, Objects.requireNonNull(limit), call.by()));
  }
}
