package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.HandlerType;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.chordlog.account.Role;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.store.Some;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an empty form is refused for is what the API's document says is required. */
@Tag("slow")
final class NeededFieldsTest {
  private static final String FORMS = "#/components/schemas/";

  /** Its fields are those of the station file. */
  private static final String STATION = "StationForm";

  @TempDir Path directory;

  /** Names of forms, each with the fields without which one is refused. */
  private final Map<String, Set<String>> refused = new TreeMap<>();

  /** Sends a body and tells what is answered. */
  private interface Sent {
    HttpResponse<String> to(String path, String body) throws Exception;
  }

  @Test
  void whatAnEmptyFormLacksIsRequired() throws Exception {
    JsonNode document;
    try (Served served = new Served(directory)) {
      document = served.json(OpenApi.PATH);
      filled(served);
      ask(served, document, served::post);
    }
    try (Served served = ShopPeople.served(directory.resolve("people"))) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      ask(served, document, (path, body) -> people.ask(boss, "POST", path, body));
    }
    assertTrue(refused.size() > 30, refused.keySet()::toString);
    Map<String, Set<String>> untold = new TreeMap<>();
    refused.forEach((form, fields) -> untold.put(form, untold(document, form, fields)));
    untold.values().removeIf(Set::isEmpty);
    assertEquals(Map.of(), untold);
  }

  private static Set<String> untold(JsonNode document, String form, Set<String> fields) {
    Set<String> untold = new TreeSet<>(fields);
    document
        .at("/components/schemas/" + form + "/required")
        .forEach(each -> untold.remove(each.asText()));
    return untold;
  }

  /** Something of everything that a path can name. */
  private static void filled(Served served) throws Exception {
    Job job = served.job();
    served.readings(job, 3);
    CompleteStudy.in(served.store, job);
    AlertKey lost = AlertKey.station(AlertKind.LINK_LOST, "A");
    var unused = served.store.alerts().add(Some.raised(lost, Some.T0));
    served.post("/api/machines/three-roll%20bender/logbook", "{\"kind\": \"LUBRICATED\"}");
    served.post("/api/stations/A/events", "{\"kind\": \"NOTE\", \"note\": \"all well\"}");
  }

  private void ask(Served served, JsonNode document, Sent sent) throws Exception {
    for (Route route : served.web.routes()) {
      String form = form(document, route);
      if (route.method().equals(HandlerType.POST) && !form.isEmpty() && !form.equals(STATION)) {
        note(form, sent.to(OpenApiTest.path(route.path()), "{}"));
      }
    }
  }

  private void note(String form, HttpResponse<String> answer) throws Exception {
    if (answer.statusCode() == 400) {
      for (JsonNode fault : Served.tree(answer).get("faults")) {
        String field = fault.get("field").asText();
        if (fault.get("problem").asText().equals("is missing") && !field.contains(".")) {
          refused.computeIfAbsent(form, each -> new TreeSet<>()).add(field);
        }
      }
    }
  }

  private static String form(JsonNode document, Route route) {
    String method = route.method().name().toLowerCase(Locale.ROOT);
    return document
        .at(
            OpenApiTest.pointer(
                "paths", route.path(), method, "requestBody", "content", "application/json"))
        .at("/schema/$ref")
        .asText()
        .replace(FORMS, "");
  }
}
