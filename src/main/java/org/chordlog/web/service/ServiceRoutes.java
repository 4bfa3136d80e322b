package org.chordlog.web.service;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.chart.Theme;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;

/** What looks after the service: health, metrics and the API document. */
public final class ServiceRoutes {
  /** Answered whatever else keeps the service busy. */
  public static final String LIVE = "/health/live";

  private final Supplier<Health> health;
  private final Metrics metrics;

  /** The API document, once it was asked for. */
  private byte[] written = {};

  public ServiceRoutes(Supplier<Health> health, Metrics metrics) {
    this.health = health;
    this.metrics = metrics;
  }

  public List<Route> routes(Supplier<ObjectNode> document) {
    return List.of(
        Route.get("/health", "How the service is; 503 while readings can't be kept")
            .answers(Health.class, this::health),
        Route.open(LIVE, "Answers while the process lives").does(call -> {}),
        Route.get("/metrics", "Metrics for Prometheus").sends("text/plain", this::metrics),
        Route.open("/api/charts.css", "Colours of the charts, light and dark, as custom properties")
            .sends("text/css", call -> call.ctx().contentType("text/css").result(Theme.css())),
        Route.get(OpenApi.PATH, "This document")
            .sends(
                "application/json",
                call -> call.ctx().contentType("application/json").result(once(document))));
  }

  /** The rows stay as they are while the service runs. */
  private synchronized byte[] once(Supplier<ObjectNode> document) {
    if (written.length == 0) {
      written = Json.bytes(document.get());
    }
    return written;
  }

  private Health health(Call call) {
    Health now = health.get();
    call.ctx().header("Cache-Control", "no-store");
    if (!now.ready()) {
      call.ctx().status(503);
    }
    return now;
  }

  private void metrics(Call call) {
    Metrics.Exposition exposition = metrics.expose(call.ctx().header("Accept"));
    call.ctx().contentType(exposition.contentType()).result(exposition.text());
  }
}
