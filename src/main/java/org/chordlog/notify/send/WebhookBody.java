package org.chordlog.notify.send;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.Instant;
import java.util.Locale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.settings.AlertSettings.Site;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;

/** An event as JSON in the form that the Standard Webhooks specification proposes. */
record WebhookBody(Site site) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  /** The whole; times in ISO 8601, UTC. */
  record Body(String type, String timestamp, Data data) {}

  /** What is the same at each event of an alert, then what this one says. */
  record Data(
      String site,
      long alert,
      String kind,
      String priority,
      String about,
      String name,
      String title,
      String evidence,
      String whatToDo,
      String link,
      Now now) {}

  /** The alert as it is after the event. */
  record Now(
      int revision, String state, boolean present, String since, String assignedTo, String by) {}

  String of(AlertEvent event) {
    try {
      return MAPPER.writeValueAsString(
          new Body(
              "alert." + lower(event.what()),
              Micros.instant(event.atMicros()).toString(),
              data(event)));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Of no alert: that the receiver can be reached. */
  String test(Instant now) {
    return "{\"type\":\"alert.test\",\"timestamp\":\"" + now + "\",\"data\":{}}";
  }

  private Data data(AlertEvent event) {
    Alert alert = event.alert();
    return new Data(
        site.name(),
        alert.id(),
        lower(alert.kind()),
        lower(alert.treatedAs().priority()),
        lower(alert.subject().type()),
        alert.subject().name(),
        new AlertStatement(alert).title(),
        new AlertStatement(alert).evidence().in(site.lengths()),
        AlertWords.whatToDo(alert.treatedAs()),
        site.link("alerts.html#" + alert.id()),
        new Now(
            alert.revision(),
            lower(alert.state()),
            alert.status().present(),
            Micros.instant(alert.status().sinceMicros()).toString(),
            alert.assignedTo(),
            event.by()));
  }

  private static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
