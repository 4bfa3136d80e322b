package org.chordlog.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.chordlog.account.Entrance;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.monitor.Monitor;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.station.Announcement;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;
import org.chordlog.web.http.Access;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.SentTwice;
import org.chordlog.web.http.Times;
import org.chordlog.web.http.WebSettings;
import org.chordlog.web.service.Health;
import org.chordlog.web.service.HealthReport;
import org.chordlog.web.service.Metrics;
import org.chordlog.web.service.ServiceRoutes;
import org.jspecify.annotations.Nullable;

/**
 * The parts of the service put behind routes. Made before the first station is added, so that no
 * announcement is missed; started after; closed before everything that it reads from.
 */
public final class Web implements AutoCloseable {
  private final Stations stations;
  private final Announcements announcements;
  private final Entrance entrance;
  private final SessionSweeper sweeper;
  private final AlertFeed feed;
  private final EventHub hub;
  private final WebServer server;
  private final List<Route> routes;
  private final Metrics metrics;
  private final WebPort port;
  private final Clock clock;

  /** Gives null where nothing is watched. */
  private volatile Supplier<? extends @Nullable AlertCounts> alerts = () -> null;

  private volatile Supplier<AlertsState> alertsState = () -> AlertsState.OFF;

  /** Gives null where nobody is told of alerts. */
  private volatile Supplier<? extends @Nullable DeliveryStatus> messages = () -> null;

  /** Gives null where nothing is delivered to a plant. */
  private volatile Supplier<? extends @Nullable ForwardStatus> delivery = () -> null;

  /** {@code keeper} keeps a station that a page adds, so that it is there at the next start. */
  public Web(
      WebSettings settings,
      Store store,
      Stations stations,
      Monitor monitor,
      ChartRenderer charts,
      Clock clock,
      StationKeeper keeper) {
    this.stations = stations;
    this.clock = clock;
    port = new WebPort(settings);
    entrance = new Entrance(store.accounts(), clock);
    hub = new EventHub(settings, clock, store, ReadingView::of, this::states);
    announcements = new Announcements(hub);
    feed = new AlertFeed(store.alerts(), hub);
    Supplier<Health> health =
        () ->
            new HealthReport(store.health(), stations.statuses(), charts.fault(), hub.clientCount())
                .certificate(port.tls(), clock.instant())
                .alerts(alerts.get())
                .messages(messages.get())
                .plant(delivery.get())
                .health();
    metrics = new Metrics(stations::statuses, store::health, hub::clientCount);
    port.tls().ifPresent(any -> metrics.certificate(() -> daysLeft()));
    StoreRoutes.Served served =
        new StoreRoutes.Served(
            store, stations, keeper, monitor, hub, feed, () -> alertsState.get());
    routes =
        new ArrayList<>(
            StoreRoutes.of(served, new Pictures(charts), StoreRoutes.Shared.usual(clock)));
    ServiceRoutes service = new ServiceRoutes(health, metrics);
    routes.addAll(service.routes(() -> document(routes())));
    routes.addAll(SignInRoutes.of(settings, entrance));
    SentTwice twice = new SentTwice(store.answeredRequests());
    routes.replaceAll(twice::around);
    Access access = new Access(settings, port::certifiedNames, entrance);
    server = new WebServer(port, access, Pages.rows(), routes, hub::close);
    entrance.whenEnded(hub::endSession);
    sweeper = new SessionSweeper(entrance.sessions());
    stations.subscribe(announcements);
  }

  private long daysLeft() {
    return port.tls().orElseThrow().daysLeft(clock.instant());
  }

  /** Of the certificate in use; null where the service speaks no TLS of its own. */
  public @Nullable Long certificateDaysLeft() {
    return port.tls().map(each -> each.daysLeft(clock.instant())).orElse(null);
  }

  /** From now on health and metrics say how messages about alerts are delivered. */
  public void toldBy(Supplier<DeliveryStatus> status) {
    messages = status;
    metrics.messages(status);
  }

  /** From now on health and metrics say what the plant does not have yet. */
  public void deliveredBy(Supplier<ForwardStatus> status) {
    delivery = status;
    metrics.plant(status, () -> Times.micros(clock.instant()));
  }

  /** From now on health and metrics tell of alerts. */
  public void watchedBy(Supplier<AlertCounts> counts) {
    alerts = counts;
    metrics.alerts(counts);
  }

  /** Every route there is. */
  List<Route> routes() {
    return List.copyOf(routes);
  }

  private static ObjectNode document(List<Route> all) {
    return OpenApi.document(all, version());
  }

  /** Of this program. */
  public static String version() {
    String version = Web.class.getPackage().getImplementationVersion();
    return version == null ? "development" : version;
  }

  private List<ServerEvent> states() {
    return Stream.concat(
            stations.statuses().stream()
                .map(status -> new Announcement.State(status.station(), status))
                .map(Announcements::event),
            Stream.of(feed.event()))
        .toList();
  }

  /** What looks for alerts and tells them; nothing does until this is called. */
  public void alertsFrom(Supplier<AlertsState> state) {
    alertsState = state;
  }

  /** Binds and serves; refuses when the port is taken. */
  public void start() {
    hub.start();
    server.start();
    sweeper.start();
    feed.start();
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
    stations.unsubscribe(announcements);
    sweeper.close();
    feed.close();
    server.close();
  }
}
