package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.AlertWatch;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What health and metrics say of alerts. */
final class AlertHealthTest {
  @TempDir Path directory;

  @Test
  void withoutAWatchNothingIsSaidAndNothingRuns() throws Exception {
    try (Served served = new Served(directory)) {
      assertTrue(served.json("/health").get("alerts").isNull());
      assertFalse(served.get("/metrics").body().contains("chordlog_alert"));
      assertTrue(
          Thread.getAllStackTraces().keySet().stream()
              .noneMatch(each -> each.getName().matches("alert-(watch|audit)")));
    }
  }

  @Test
  void theWatchTellsWhatWaits() throws Exception {
    try (Served served = new Served(directory);
        AlertWatch watch = served.watch()) {
      assertEquals(0, watch.counts().raised());
      AlertKey creep = AlertKey.machine(AlertKind.ROLLER_CREEPS, "M");
      served.store.alerts().add(Some.raised(creep, Some.T0));
      Await.until(() -> !served.json("/health").at("/alerts/lastRound").isNull());
      JsonNode alerts = served.json("/health").get("alerts");
      assertTrue(alerts.get("watching").asBoolean());
      assertEquals(1, alerts.get("waiting").asInt());
      assertEquals(1, alerts.at("/open/unacknowledged").asInt());
      assertEquals(0, alerts.at("/open/shelved").asInt());
      String metrics = served.get("/metrics").body();
      assertTrue(metrics.contains("chordlog_alerts{state=\"unacknowledged\"} 1.0"), metrics);
      assertTrue(metrics.contains("chordlog_alerts_raised_total 1.0"), metrics);
      assertTrue(metrics.contains("chordlog_alerts_watching 1.0"), metrics);
    }
  }
}
