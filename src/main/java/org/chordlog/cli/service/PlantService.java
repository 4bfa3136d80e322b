package org.chordlog.cli.service;

import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import org.chordlog.account.Entrance;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.store.Plant;
import org.chordlog.web.PlantWeb;
import org.chordlog.web.http.WebSettings;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running service of a plant: its database, charts, pages; no station and no data directory.
 */
public final class PlantService implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(PlantService.class);
  private final Deque<AutoCloseable> running = new ArrayDeque<>();
  private final PlantWeb web;

  private PlantService(Plant plant, WebSettings settings) {
    running.push(plant);
    ChartRenderer charts = ChartRenderer.idle();
    running.push(charts);
    web = new PlantWeb(settings, plant, charts, Clock.systemUTC());
    running.push(web);
    web.start();
    charts.warmUp();
  }

  /** Starts it on a plant that is open, and closed with the rest. */
  public static PlantService start(Plant plant, WebSettings settings) {
    return new PlantService(plant, settings);
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
