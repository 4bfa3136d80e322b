package org.chordlog.web;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Tone;
import org.chordlog.web.service.Health;
import org.chordlog.web.service.HealthReport;

/** How the service of a plant is: its database, and every workshop computer that is not well. */
record PlantHealth(
    Store own,
    PlantRooms rooms,
    PlantRoutes plant,
    ChartRenderer charts,
    WebPort port,
    Clock clock,
    PlantAlerts alerts) {
  Health now() {
    return new HealthReport(
            own.health(), List.of(), charts.fault(), rooms.listening() + alerts.listening())
        .certificate(port.tls(), clock.instant())
        .alerts(alerts.counts())
        .messages(alerts.messages())
        .because(edges())
        .health();
  }

  private List<String> edges() {
    List<String> reasons = new ArrayList<>();
    try {
      rooms.edges().forEach(edge -> add(edge, reasons));
    } catch (StoreException e) {
      reasons.add("plant: " + e.getMessage());
    }
    return reasons;
  }

  private void add(Plant.Edge edge, List<String> reasons) {
    Statement said = plant.statement(edge).statement();
    if (said.tone() == Tone.BAD || said.tone() == Tone.OPEN) {
      reasons.add(edge.name() + ": " + said.reason());
    }
  }
}
