package org.chordlog.cli.service;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.chordlog.account.Entrance;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.notify.AlertWatch;
import org.chordlog.notify.WatchedPlant;
import org.chordlog.store.Plant;
import org.chordlog.web.AlertsState;
import org.chordlog.web.PlantWeb;
import org.chordlog.web.http.Times;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running service of a plant: its database, charts, pages, and the watch over its workshop
 * computers; no station and no data directory.
 */
public final class PlantService implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(PlantService.class);
  private final Deque<AutoCloseable> running = new ArrayDeque<>();
  private final Plant plant;
  private final PlantWeb web;

  /**
   * How workshop computers are watched: after what silence one is told of, by whom ({@code file} of
   * alerts; null: nobody is told), in which rounds, and by which clock.
   */
  public record Alerts(Duration silent, @Nullable Path file, AlertWatch.Times times, Clock clock) {
    /** Nobody is told. */
    public static final Alerts USUAL = usual(WatchedPlant.USUAL_SILENT, null);

    static Alerts usual(Duration silent, @Nullable Path file) {
      return new Alerts(silent, file, AlertWatch.Times.USUAL, Clock.systemUTC());
    }
  }

  private PlantService(Plant plant, WebSettings settings, Alerts alerts) {
    this.plant = plant;
    @Nullable AlertSource source = alerts.file() == null ? null : AlertSource.read(alerts.file());
    keep(plant);
    ChartRenderer charts = keep(ChartRenderer.idle());
    web = keep(new PlantWeb(settings, plant, charts, Clock.systemUTC()));
    @Nullable Telling telling = source == null ? null : tell(source, alerts);
    watch(alerts, telling);
    web.start();
    charts.warmUp();
  }

  /** As below; nobody is told of alerts. */
  public static PlantService start(Plant plant, WebSettings settings) {
    return start(plant, settings, Alerts.USUAL);
  }

  /** Starts it on a plant that is open, and closed with the rest. */
  public static PlantService start(Plant plant, WebSettings settings, Alerts alerts) {
    return new PlantService(plant, settings, alerts);
  }

  private <T extends AutoCloseable> T keep(T part) {
    running.push(part);
    return part;
  }

  /** In rounds as often as those of the watch. */
  private Telling tell(AlertSource source, Alerts alerts) {
    Plant.Turn turn = keep(plant.turn("messages"));
    Telling.Pace pace = Telling.Pace.of(alerts.times().round());
    Telling made = keep(new Telling(source, plant.own(), alerts.clock(), pace, turn::mine));
    web.toldBy(made::status);
    return made;
  }

  private void watch(Alerts alerts, @Nullable Telling telling) {
    Plant.Turn turn = keep(plant.turn("alerts"));
    WatchedPlant watched = new WatchedPlant(plant, alerts.silent(), turn::mine);
    AlertWatch watch =
        keep(
            new AlertWatch(
                watched, () -> Times.micros(Instant.now(alerts.clock())), alerts.times()));
    web.watchedBy(watch::counts);
    web.alertsFrom(
        () ->
            new AlertsState(
                watch.since(),
                telling != null,
                telling == null ? List.of() : telling.status().problems()));
    watch.start();
  }

  Entrance entrance() {
    return web.entrance();
  }

  public int port() {
    return web.port();
  }

  @Override
  public synchronized void close() {
    while (!running.isEmpty()) {
      try {
        running.pop().close();
      } catch (Exception e) {
        LOG.atError().setCause(e).log("did not stop well");
      }
    }
  }
}
