package org.chordlog.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.account.Entrance;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.web.http.Access;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.SentTwice;
import org.chordlog.web.http.WebSettings;
import org.chordlog.web.service.Metrics;
import org.chordlog.web.service.ServiceRoutes;

/**
 * A plant put behind routes: an overview of its own, and below the name of each workshop computer
 * the pages and the API that it has itself, from what it delivered. People sign in at the plant;
 * close it before the plant.
 */
public final class PlantWeb implements AutoCloseable {
  private final WebPort port;
  private final Entrance entrance;
  private final SessionSweeper sweeper;
  private final PlantRooms rooms;
  private final PlantWatch watch;
  private final PlantAlerts alerts;
  private final Metrics metrics;
  private final WebServer server;
  private final List<Route> documented;

  public PlantWeb(WebSettings settings, Plant plant, ChartRenderer charts, Clock clock) {
    port = new WebPort(settings);
    Store own = plant.own();
    entrance = new Entrance(own.accounts(), clock);
    sweeper = new SessionSweeper(entrance.sessions());
    rooms = new PlantRooms(plant, settings, charts, StoreRoutes.Shared.usual(clock));
    watch = new PlantWatch(plant, rooms);
    PlantRoutes ofPlant = new PlantRoutes(plant, rooms, watch, clock);
    alerts = new PlantAlerts(settings, own, clock);
    PlantHealth health = new PlantHealth(own, rooms, ofPlant, charts, port, clock, alerts);
    metrics = new Metrics(List::of, own::health, this::listening);
    new PlantMetrics(rooms, watch, clock).addTo(metrics);
    List<Route> shared = new ArrayList<>(new WordsRoutes().routes());
    shared.addAll(new ServiceRoutes(health::now, metrics).routes(this::document));
    shared.addAll(SignInRoutes.ofSessions(settings, entrance));
    List<Route> ofService = new ArrayList<>(ofPlant.routes());
    ofService.addAll(alerts.routes());
    ofService.addAll(shared);
    ofService.addAll(SignInRoutes.ofAccounts(settings, entrance));
    List<Route> passedOn = new ArrayList<>(ofPlant.below());
    passedOn.addAll(new RequestRoutes(plant, rooms, clock).routes());
    ofService.addAll(new EdgeRoutes(rooms).routes(rooms.rows(own), passedOn));
    documented = List.copyOf(ofService);
    SentTwice twice = new SentTwice(own.answeredRequests());
    List<Route> all = new ArrayList<>(documented);
    shared.stream()
        .filter(each -> !documentedBelow(each))
        .forEach(each -> all.add(each.below(EdgeRoutes.BELOW, each.handler())));
    all.replaceAll(twice::around);
    Access access = new Access(settings, port::certifiedNames, entrance);
    server = new WebServer(port, access, new PlantPages(rooms).rows(), all, this::endListening);
    entrance.whenEnded(this::endSession);
  }

  /** Pages that listen. */
  private int listening() {
    return rooms.listening() + alerts.listening();
  }

  private void endListening() {
    alerts.close();
    rooms.close();
  }

  private void endSession(String session) {
    alerts.endSession(session);
    rooms.endSession(session);
  }

  /** From now on health and metrics tell of alerts. */
  public void watchedBy(Supplier<AlertCounts> counts) {
    alerts.watchedBy(counts);
    metrics.alerts(counts);
  }

  /** From now on health and metrics say how messages about alerts are delivered. */
  public void toldBy(Supplier<DeliveryStatus> status) {
    alerts.toldBy(status);
    metrics.messages(status);
  }

  /** What looks for alerts and tells them; nothing does until this is called. */
  public void alertsFrom(Supplier<AlertsState> state) {
    alerts.from(state);
  }

  /** The words are a row of each workshop computer anyway. */
  private boolean documentedBelow(Route row) {
    String path = EdgeRoutes.BELOW + row.path();
    return documented.stream()
        .anyMatch(each -> each.path().equals(path) && each.method().equals(row.method()));
  }

  private ObjectNode document() {
    return OpenApi.document(documented, Web.version());
  }

  /** Of the API, without those that are the same below a workshop computer. */
  List<Route> routes() {
    return documented;
  }

  /** Binds and serves; refuses when the port is taken. */
  public void start() {
    server.start();
    sweeper.start();
    alerts.start();
    watch.start();
  }

  /** Where people sign in. */
  public Entrance entrance() {
    return entrance;
  }

  /** The port in use, also when any was asked for. */
  public int port() {
    return server.port();
  }

  @Override
  public void close() {
    watch.close();
    sweeper.close();
    server.close();
  }
}
