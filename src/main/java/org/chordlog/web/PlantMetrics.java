package org.chordlog.web;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.chordlog.store.Plant;
import org.chordlog.web.http.Times;
import org.chordlog.web.service.Metrics;

/** What a plant tells Prometheus of each workshop computer that has delivered something. */
record PlantMetrics(PlantRooms rooms, PlantWatch watch, Clock clock) {
  private static final double MICROS = 1e6;

  void addTo(Metrics metrics) {
    metrics.ofEdges(
        "chordlog_edge_silent_seconds",
        "Time since the workshop computer last spoke.",
        () -> each(edge -> (now() - heard(edge)) / MICROS));
    metrics.ofEdges(
        "chordlog_edge_backlog_records",
        "Records that were not here when it last spoke.",
        () -> each(edge -> delivered(edge).backlogRows()));
    metrics.ofEdges(
        "chordlog_edge_last_reading",
        "Everything up to this reading is here.",
        () -> each(edge -> delivered(edge).lastReadingId()));
    metrics.ofEdges(
        "chordlog_edge_clock_ahead_seconds",
        "Its clock less that of the plant.",
        () -> each(edge -> delivered(edge).clockAheadMicros() / MICROS));
    metrics.ofEdges(
        "chordlog_edge_waiting_alerts",
        "Its alerts that wait for somebody.",
        () -> each(edge -> watch.of(edge).map(EdgeSummary::waiting).orElse(0)));
  }

  private List<Metrics.OfEdge> each(ToDoubleFunction<Plant.Edge> value) {
    return rooms.edges().stream()
        .filter(edge -> edge.delivered() != null)
        .map(edge -> new Metrics.OfEdge(edge.name(), value.applyAsDouble(edge)))
        .toList();
  }

  private static long heard(Plant.Edge edge) {
    return delivered(edge).seenMicros();
  }

  private static Plant.Delivered delivered(Plant.Edge edge) {
    Plant.Delivered delivered = edge.delivered();
    if (delivered == null) {
      throw new IllegalArgumentException(edge.name() + " has delivered nothing");
    }
    return delivered;
  }

  private long now() {
    return Times.micros(Instant.now(clock));
  }
}
