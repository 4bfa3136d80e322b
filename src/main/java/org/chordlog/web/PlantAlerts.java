package org.chordlog.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.store.Store;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;

/** The alerts of a plant itself, about its workshop computers. Any thread. */
final class PlantAlerts implements AutoCloseable {
  private final Store own;
  private final Clock clock;
  private final EventHub hub;
  private final AlertFeed feed;

  /** Gives null where nothing is watched. */
  private volatile Supplier<? extends @Nullable AlertCounts> counts = () -> null;

  /** Gives null where nobody is told. */
  private volatile Supplier<? extends @Nullable DeliveryStatus> messages = () -> null;

  private volatile Supplier<AlertsState> state = () -> AlertsState.OFF;

  PlantAlerts(WebSettings settings, Store own, Clock clock) {
    this.own = own;
    this.clock = clock;
    hub = new EventHub(settings, clock, own, ReadingView::of, this::states);
    feed = new AlertFeed(own.alerts(), hub);
  }

  private List<ServerEvent> states() {
    return List.of(feed.event());
  }

  List<Route> routes() {
    AlertViews views = new AlertViews(own.alerts(), own.outbox(), clock);
    List<Route> all = new ArrayList<>();
    all.addAll(new AlertRoutes(views, feed, () -> state.get()).routes());
    all.addAll(new AlertActionRoutes(views, feed).routes());
    all.addAll(new EventRoutes(hub).routes());
    return all;
  }

  void watchedBy(Supplier<AlertCounts> watch) {
    counts = watch;
  }

  void toldBy(Supplier<DeliveryStatus> status) {
    messages = status;
  }

  void from(Supplier<AlertsState> service) {
    state = service;
  }

  @Nullable AlertCounts counts() {
    return counts.get();
  }

  @Nullable DeliveryStatus messages() {
    return messages.get();
  }

  /** Pages that listen. */
  int listening() {
    return hub.clientCount();
  }

  void start() {
    hub.start();
    feed.start();
  }

  void endSession(String session) {
    hub.endSession(session);
  }

  @Override
  public void close() {
    feed.close();
    hub.close();
  }
}
