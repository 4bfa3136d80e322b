package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Map;
import org.chordlog.account.Right;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Sentence;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Bridges, masters, zeros, calibrations and checks as stored. */
final class GaugeRoutes {
  private static final int MOST = 500;
  private final Gauges gauges;
  private final Stations stations;

  GaugeRoutes(Gauges gauges, Stations stations) {
    this.gauges = gauges;
    this.stations = stations;
  }

  /** A comparison of a station against a master. */
  record CheckView(
      long id,
      String station,
      long bridgeId,
      long masterId,
      @JsonPropertyDescription("null when the master read flat") @Nullable Double radiusMm,
      double masterRadiusMm,
      double limitMm,
      boolean passed,
      String takenAt,
      String takenBy) {
    static CheckView of(InterimCheck c) {
      return new CheckView(
          c.id(),
          c.station(),
          c.bridgeId(),
          c.masterId(),
          c.radiusMm(),
          c.masterRadiusMm(),
          c.limitMm(),
          c.passed(),
          Times.iso(c.takenAtMicros()),
          c.takenBy());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/bridges", "Bridges in use").answersList(BridgeView.class, this::bridges),
        Route.get("/api/bridges/{bridge}", "A bridge, also one that was replaced")
            .answers(BridgeView.class, call -> BridgeView.of(bridge(call))),
        Route.post(Right.GAUGE, "/api/bridges", "Adds a bridge")
            .body(BridgeForm.class)
            .creates(BridgeView.class, this::add),
        Route.put(Right.GAUGE, "/api/bridges/{bridge}", "Keeps a changed bridge under a new id")
            .body(BridgeForm.class)
            .answers(BridgeView.class, this::replace),
        Route.get("/api/masters", "Masters").answersList(Master.class, call -> gauges.masters()),
        Route.post(Right.GAUGE, "/api/masters", "Adds a master")
            .body(MasterForm.class)
            .creates(Master.class, this::addMaster),
        Route.get("/api/calibrations", "Calibrations of all stations, the newest first")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersList(CalibrationView.class, this::calibrations),
        Route.get("/api/stations/{station}/zeros", "Zeros, the newest first")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersList(ZeroView.class, this::zeros),
        Route.get("/api/stations/{station}/checks", "Interim checks of a bridge, the newest first")
            .query("bridge", "integer", "the one mounted, if left out")
            .query("limit", "integer", "1 to " + MOST + ", 100 if left out")
            .answersList(CheckView.class, this::checks));
  }

  private List<BridgeView> bridges(Call call) {
    return gauges.bridges().stream().map(BridgeView::of).toList();
  }

  private Bridge bridge(Call call) {
    long id = call.id("bridge");
    return gauges.bridge(id).orElseThrow(() -> Refusal.notFound("bridge", id));
  }

  private BridgeView add(Call call) {
    return BridgeView.of(gauges.add(call.body(BridgeForm.class).bridge(), call.by()));
  }

  private Master addMaster(Call call) {
    Master master = call.body(MasterForm.class).master();
    double unused = MasterReach.of(gauges, stations).checked("radiusMm", master.radiusMm());
    return gauges.add(master, call.by());
  }

  private BridgeView replace(Call call) {
    Bridge old = bridge(call);
    BridgeForm form = call.body(BridgeForm.class);
    String why = new JobRoutes.Why(form.why()).needed();
    return BridgeView.of(gauges.replace(old.id(), form.bridge(), call.by(), why));
  }

  private List<CalibrationView> calibrations(Call call) {
    return gauges.calibrations(limit(call)).stream().map(CalibrationView::of).toList();
  }

  private List<ZeroView> zeros(Call call) {
    String station = StationRoutes.known(stations, call);
    Map<Long, Sentence> doubts = stations.at(station).zeroDoubts();
    return gauges.zeros(station, limit(call)).stream()
        .map(each -> ZeroView.of(each, doubts.get(each.id())))
        .toList();
  }

  private List<CheckView> checks(Call call) {
    String station = StationRoutes.known(stations, call);
    long mounted = gauges.mountedOn(station).map(Bridge::id).orElse(0L);
    long bridge = call.query("bridge", mounted, 0, Long.MAX_VALUE);
    return gauges.checks(station, bridge, limit(call)).stream().map(CheckView::of).toList();
  }

  private static int limit(Call call) {
    return (int) call.query("limit", 100, 1, MOST);
  }
}
