package org.chordlog.web;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;

/**
 * What the records of one workshop computer are served from at a plant: its pictures and events,
 * which come from its store alone; no station measures here. Any thread.
 */
final class EdgeRooms implements AutoCloseable {
  private static final int PICTURES = 16;
  private final EventHub hub;
  private final AlertFeed feed;
  private final List<Route> routes;
  private final Map<String, Handler> handlers = new HashMap<>();

  private EdgeRooms(
      Store store,
      Monitor monitor,
      WebSettings settings,
      ChartRenderer charts,
      StoreRoutes.Shared with) {
    hub = new EventHub(settings, with.clock(), store, ReadingView::of, this::states);
    feed = new AlertFeed(store.alerts(), hub);
    StoreRoutes.Served served =
        new StoreRoutes.Served(
            store,
            new Stations(store, StationClock.system()),
            StationKeeper.forThisRun(),
            monitor,
            hub,
            feed,
            () -> AlertsState.OFF);
    routes = StoreRoutes.of(served, new Pictures(charts, PICTURES), with);
    routes.forEach(each -> handlers.put(key(each), each.handler()));
  }

  /** Only to know what there is; nothing runs. */
  static List<Route> rows(
      Store any, WebSettings settings, ChartRenderer charts, StoreRoutes.Shared with) {
    try (Monitor unused = new Monitor(any)) {
      return new EdgeRooms(any, unused, settings, charts, with).routes;
    }
  }

  static EdgeRooms open(
      Store store,
      Monitor monitor,
      WebSettings settings,
      ChartRenderer charts,
      StoreRoutes.Shared with) {
    EdgeRooms made = new EdgeRooms(store, monitor, settings, charts, with);
    made.hub.start();
    made.feed.start();
    return made;
  }

  /** Answers as the service of that computer does. */
  void answer(Route row, Context ctx) throws Exception {
    Objects.requireNonNull(handlers.get(key(row))).handle(ctx);
  }

  private static String key(Route row) {
    return row.method() + " " + row.path();
  }

  private List<ServerEvent> states() {
    return List.of(feed.event());
  }

  int listening() {
    return hub.clientCount();
  }

  void endSession(String session) {
    hub.endSession(session);
  }

  /** Ends its events. */
  @Override
  public void close() {
    hub.close();
    feed.close();
  }
}
