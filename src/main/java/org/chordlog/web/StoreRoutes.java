package org.chordlog.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.http.RequestLimiter;
import org.chordlog.web.http.Route;

/**
 * The routes by which one store is served, with the stations that measure into it; of the store of
 * a workshop computer at a plant there are none.
 */
final class StoreRoutes {
  private final Served of;
  private final Shared with;
  private final OtherComputers others;

  private StoreRoutes(Served of, Shared with) {
    this.of = of;
    this.with = with;
    this.others = new OtherComputers(of.stations()::settings, System::nanoTime);
  }

  /**
   * What is served; {@code keeper} keeps a station that a page adds; {@code alerts} tells what
   * looks for alerts.
   */
  record Served(
      Store store,
      Stations stations,
      StationKeeper keeper,
      Monitor monitor,
      EventHub hub,
      AlertFeed feed,
      Supplier<AlertsState> alerts) {}

  /** What all stores of a service share: the bounds on what is made at once, and the time. */
  record Shared(RequestLimiter figures, RequestLimiter files, RequestLimiter ports, Clock clock) {
    static Shared usual(Clock clock) {
      return new Shared(
          RequestLimiter.ofFigures(), RequestLimiter.ofFiles(), RequestLimiter.ofPorts(), clock);
    }
  }

  /** In the order of the API document. */
  static List<Route> of(Served of, Pictures pictures, Shared with) {
    StoreRoutes made = new StoreRoutes(of, with);
    List<Route> all = new ArrayList<>(made.records());
    all.addAll(made.stations());
    all.addAll(made.figures(pictures));
    all.addAll(made.alerts());
    all.addAll(made.judgements(pictures));
    all.addAll(made.corrections(pictures));
    all.addAll(made.files());
    return all;
  }

  private List<Route> records() {
    Store store = of.store();
    Stations stations = of.stations();
    List<Route> all = new ArrayList<>();
    all.addAll(new StationRoutes(stations).routes());
    all.addAll(new PlaceRoutes(stations).routes());
    all.addAll(new JobRoutes(store, stations, with.clock(), of.hub()::replace).routes());
    all.addAll(new OrderRoutes(store, stations, with.clock()).routes());
    all.addAll(new ReadingRoutes(store).routes());
    all.addAll(new TraceRoutes(store).routes());
    all.addAll(new GaugeRoutes(store.gauges(), stations).routes());
    all.addAll(new GaugeFileRoutes(store.gauges(), stations, with.clock()).routes());
    all.addAll(new RadiusRoutes(store, stations).routes());
    all.addAll(new DoubtRoutes(store, stations).routes());
    all.addAll(new RecordRoutes(store, stations).routes());
    all.addAll(new PieceMoveRoutes(store, stations).routes());
    all.addAll(new MasterRoutes(stations, with.clock()).routes());
    all.addAll(new PortProbeRoutes(others, with.ports()).routes());
    all.addAll(with.ports().around(new PortReadRoutes(others).routes()));
    all.addAll(new ChangeRoutes(store.changes()).routes());
    all.addAll(new SignalAnswerRoutes(store, with.clock()).routes());
    all.addAll(new EventRoutes(of.hub()).routes());
    all.addAll(new RecentRoutes(stations, store).routes());
    all.addAll(new WordsRoutes().routes());
    return all;
  }

  private List<Route> stations() {
    List<Route> all = new ArrayList<>();
    all.addAll(new PortRoutes(of.stations(), of.keeper(), others).routes());
    all.addAll(new StationSettingsRoutes(of.stations(), of.keeper(), others).routes());
    all.addAll(new OverviewRoutes(of.stations(), of.store(), of.monitor(), with.clock()).routes());
    return all;
  }

  private List<Route> figures(Pictures pictures) {
    Store store = of.store();
    Monitor monitor = of.monitor();
    RollerWatch rollers = new RollerWatch(store);
    List<Route> all = new ArrayList<>();
    all.addAll(new StatisticsRoutes(store, monitor).routes());
    all.addAll(new PartRoutes(store, monitor).routes());
    all.addAll(new ChartRoutes(store, monitor, pictures).routes());
    all.addAll(new MachineRoutes(store, monitor, pictures, of.stations(), rollers).routes());
    all.addAll(new LineRoutes(store, of.stations(), pictures).routes());
    all.addAll(new LineAlongRoutes(store, monitor, pictures).routes());
    all.addAll(new RollerRoutes(store, rollers, pictures, with.clock()).routes());
    return with.figures().around(all);
  }

  private List<Route> alerts() {
    Store store = of.store();
    List<Route> all = new ArrayList<>();
    AlertViews views = new AlertViews(store.alerts(), store.outbox(), with.clock());
    all.addAll(new AlertRoutes(views, of.feed(), of.alerts()).routes());
    all.addAll(new AlertActionRoutes(views, of.feed()).routes());
    all.addAll(new LogbookRoutes(store, of.stations(), with.clock()).routes());
    return all;
  }

  private List<Route> judgements(Pictures pictures) {
    Store store = of.store();
    StudyRoutes studies = new StudyRoutes(store, of.stations(), with.clock());
    List<Route> all = new ArrayList<>();
    all.addAll(with.figures().around(new ShortRunRoutes(of.monitor(), pictures).routes()));
    all.addAll(with.figures().around(new AttentionRoutes(store, of.monitor()).routes()));
    all.addAll(studies.routes());
    all.addAll(with.figures().around(studies.dear()));
    all.addAll(with.figures().around(new StudyChartRoutes(store, pictures).routes()));
    return all;
  }

  private List<Route> corrections(Pictures pictures) {
    Store store = of.store();
    MachineAdvice advice = new MachineAdvice(of.stations(), store, of.monitor(), with.clock());
    List<Route> all = new ArrayList<>();
    all.addAll(new ClosingRoutes(store).routes());
    all.addAll(new RingRoutes(store).routes());
    all.addAll(new CorrectionRoutes(store, advice, pictures, with.clock()).routes());
    return all;
  }

  private List<Route> files() {
    Store store = of.store();
    JobReports reports = new JobReports(store, of.monitor());
    JobQif qif = new JobQif(store, of.monitor());
    List<Route> all = new ArrayList<>();
    all.addAll(new ExportRoutes(store, reports, qif, with.clock()).routes());
    all.addAll(new StudyReportRoutes(store, with.clock()).routes());
    return with.files().around(all);
  }
}
