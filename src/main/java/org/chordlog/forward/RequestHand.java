package org.chordlog.forward;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;

/**
 * Does here what people at the plant ask for, each once however often it is tried: an alert's event
 * has a key of the request, an entry of a log book is recognised by its author and time.
 */
record RequestHand(Store store) {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int LOOKED_AT = 200;

  /** Why it was not done, in a sentence; empty where it was, or had been before. */
  String does(Plant.Request request, long nowMicros) {
    try {
      JsonNode body = JSON.readTree(request.body());
      if (request.kind() == Plant.RequestKind.LOGBOOK_ENTRY) {
        enter(body, request.made());
      } else {
        move(request, body, new Recorded(nowMicros, request.made().by()));
      }
      return "";
    } catch (JsonProcessingException e) {
      return "it can't be read here: " + e.getOriginalMessage();
    } catch (Stale | BadInput e) {
      return String.valueOf(e.getMessage());
    }
  }

  private void move(Plant.Request request, JsonNode body, Recorded by) {
    String key = "plant request " + request.id();
    long id = body.path("alertId").asLong();
    Alert alert =
        store
            .alerts()
            .find(id)
            .orElseThrow(() -> new BadInput("alert", id, "does not exist here", "one that does"));
    boolean done = store.alerts().events(id).stream().anyMatch(event -> event.key().equals(key));
    if (!done) {
      AlertEvent unused = store.alerts().add(event(request, alert, body, by).withKey(key));
    }
  }

  private static AlertEvent event(Plant.Request request, Alert alert, JsonNode body, Recorded by) {
    return switch (request.kind()) {
      case ACKNOWLEDGE_ALERT -> AlertActions.acknowledge(alert, by, text(body, "word"));
      case SHELVE_ALERT ->
          AlertActions.shelve(alert, by, text(body, "reason"), body.path("untilMicros").asLong());
      case ASSIGN_ALERT -> AlertActions.assign(alert, by, text(body, "to"), text(body, "word"));
      case LOGBOOK_ENTRY -> throw new IllegalArgumentException("no alert");
    };
  }

  private static String text(JsonNode body, String member) {
    return body.path(member).asText("").strip();
  }

  private void enter(JsonNode body, Recorded made) {
    LogbookEntry entry = entry(body, made);
    boolean done =
        store.logbooks().ofMachine(entry.machine(), Long.MAX_VALUE, LOOKED_AT).stream()
            .map(Logbooks.Listed::entry)
            .anyMatch(each -> each.withId(0).equals(entry));
    if (!done) {
      LogbookEntry unused = store.logbooks().add(entry);
    }
  }

  private static LogbookEntry entry(JsonNode body, Recorded made) {
    return new LogbookEntry(
        0,
        text(body, "machine"),
        new LogbookEntry.Work(
            kind(text(body, "kind")),
            text(body, "roller"),
            text(body, "before"),
            text(body, "after"),
            text(body, "note")),
        new Recorded(body.path("doneMicros").asLong(), text(body, "doneBy")),
        null,
        made);
  }

  private static LogbookEntry.Kind kind(String name) {
    for (LogbookEntry.Kind each : LogbookEntry.Kind.values()) {
      if (each.name().equals(name)) {
        return each;
      }
    }
    throw new BadInput("kind", name, "is no kind of work", "a kind that this program knows");
  }
}
