package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.store.Plant;
import org.chordlog.verdict.Words;

/** What is asked of a workshop computer, in words. */
final class RequestWords {
  private RequestWords() {}

  /** {@code body} as {@link RequestRoutes} writes it for that kind. */
  static String of(Plant.RequestKind kind, JsonNode body) {
    String more = joined(text(body, "word"), text(body, "reason"), text(body, "note"));
    return more.isEmpty() ? what(kind, body) : what(kind, body) + ": " + more;
  }

  private static String what(Plant.RequestKind kind, JsonNode body) {
    String alert = text(body, "alertId");
    return switch (kind) {
      case ACKNOWLEDGE_ALERT -> "Acknowledge alert " + alert;
      case SHELVE_ALERT -> "Put alert " + alert + " aside";
      case ASSIGN_ALERT -> {
        String to = text(body, "to");
        yield "Alert " + alert + " is " + (to.isEmpty() ? "nobody" : to) + "’s";
      }
      case LOGBOOK_ENTRY ->
          text(body, "machine")
              + ": "
              + joined(
                  Words.of(LogbookEntry.Kind.valueOf(text(body, "kind"))), text(body, "roller"));
    };
  }

  private static String joined(String... parts) {
    return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
  }

  /** Empty where there is no such member. */
  private static String text(JsonNode body, String name) {
    return body.path(name).asText("");
  }
}
