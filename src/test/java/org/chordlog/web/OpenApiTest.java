package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import io.javalin.http.HandlerType;
import java.io.InputStream;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.store.Some;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The API document against the service: every route is in it, and every answer fits it. */
@Tag("slow")
final class OpenApiTest {
  private static final Map<String, String> NAMES =
      Map.of(
          "station", "A",
          "machine", "three-roll%20bender",
          "kind", "mean-and-range",
          "measure", "range");

  @TempDir Path directory;

  /**
   * Each path of the document is asked with each method: a documented one is answered or refused
   * for its own reason, any other is told to be no method of that path.
   */
  @Test
  void theServerAnswersWhatIsDocumentedAndNothingElse() throws Exception {
    try (Served served = new Served(directory)) {
      JsonNode document = served.json(OpenApi.PATH);
      assertEquals("3.1.0", document.get("openapi").asText());
      List<String> wrong = new ArrayList<>();
      for (Map.Entry<String, JsonNode> path : document.get("paths").properties()) {
        for (String method : METHODS) {
          boolean documented = path.getValue().has(method.toLowerCase(Locale.ROOT));
          String answered = answered(served, method, path(path.getKey()));
          if (documented == answered.startsWith(NO_ROUTE)) {
            wrong.add(method + " " + path.getKey() + ": " + answered);
          }
        }
      }
      assertEquals(List.of(), wrong);
    }
  }

  /** OpenAPI 3.1.1, 4.8.7.2: other characters are refused by programs that write clients. */
  @Test
  void componentsAreNamedAsTheStandardAllows() throws Exception {
    try (Served served = new Served(directory)) {
      JsonNode components = served.json(OpenApi.PATH).get("components").get("schemas");
      List<String> wrong = new ArrayList<>();
      components.fieldNames().forEachRemaining(wrong::add);
      assertTrue(wrong.size() > 100, () -> wrong.size() + " components");
      wrong.removeIf(name -> name.matches("[a-zA-Z0-9._-]+"));
      assertEquals(List.of(), wrong);
    }
  }

  private static final List<String> METHODS = List.of("GET", "POST", "PUT", "DELETE", "PATCH");
  private static final String NO_ROUTE = "no route";

  /** Without a name of who acts, so that nothing is changed; a stream is not waited for. */
  private static String answered(Served served, String method, String path) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(served.uri(path)).method(method, BodyPublishers.noBody()).build();
    HttpResponse<InputStream> answer = served.client.send(request, BodyHandlers.ofInputStream());
    try (InputStream body = answer.body()) {
      int status = answer.statusCode();
      String said = status < 400 ? "" : new String(body.readAllBytes(), StandardCharsets.UTF_8);
      boolean none = status == 405 || said.contains("There is nothing at");
      return (none ? NO_ROUTE + " " : "") + status + " " + said;
    }
  }

  @Test
  void everyAnswerFitsItsSchema() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.arcs(2_800);
      LinePieces.keep(served.store, job, 3);
      served.zeroAndFree();
      served.readings(job, 30);
      CompleteStudy.in(served.store, job);
      var unused =
          served
              .store
              .alerts()
              .add(Some.raised(AlertKey.station(AlertKind.LINK_LOST, "A"), Some.T0));
      served.post("/api/machines/three-roll%20bender/logbook", "{\"kind\": \"LUBRICATED\"}");
      served.post("/api/stations/A/events", "{\"kind\": \"NOTE\", \"note\": \"all well\"}");
      served.post(
          "/api/stations/A/undo",
          "{\"reason\": \"rocked\", \"readingId\": " + served.store.readings().lastId() + "}");
      JsonNode document = served.json(OpenApi.PATH);
      List<String> wrong = new ArrayList<>();
      for (Route route : served.web.routes()) {
        if (route.method().equals(HandlerType.GET) && !route.path().equals("/api/events")) {
          wrong.addAll(faults(served, document, route));
        }
      }
      assertEquals(List.of(), wrong);
    }
  }

  private static List<String> faults(Served served, JsonNode document, Route route)
      throws Exception {
    String path = path(route.path());
    HttpResponse<String> answer = served.get(path);
    if (answer.statusCode() != route.status()) {
      return List.of(path + " answered " + answer.statusCode() + " " + answer.body());
    }
    JsonNode schema =
        document.at(
            pointer(
                "paths",
                route.path(),
                lower(route.method()),
                "responses",
                String.valueOf(route.status()),
                "content",
                "application/json",
                "schema"));
    if (route.answer() == null) {
      return List.of();
    }
    assertTrue(schema.isObject(), path + " has no schema");
    return validate(document, schema, Served.tree(answer)).stream()
        .map(message -> path + ": " + message.getMessage())
        .toList();
  }

  /** Queries that a route can't do without. */
  private static final Map<String, String> NEEDED =
      Map.of(
          "/api/stations/{station}/radius", "?depthMm=2.7",
          "/api/ports/tries", "?port=/dev/ttyUSB0",
          "/api/study-size", "?expected=1&limit=80", // the first one tried decides
          "/api/jobs/{job}/closing/radius", "?feature=rise&measuredMm=518",
          "/api/jobs/{job}/closing/ring", "?pieces=4&bent=1");

  static String path(String template) {
    // charts of a study have kinds of their own
    String path =
        template.startsWith("/api/studies/")
            ? template.replace("{kind}", "study-readings")
            : template;
    for (Map.Entry<String, String> each : NAMES.entrySet()) {
      path = path.replace("{" + each.getKey() + "}", each.getValue());
    }
    return path.replaceAll("\\{\\w+}", "1") + NEEDED.getOrDefault(template, "");
  }

  private static Set<ValidationMessage> validate(
      JsonNode document, JsonNode schema, JsonNode data) {
    ObjectNode whole = schema.deepCopy();
    whole.set("components", document.get("components"));
    JsonSchema checked = JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(whole);
    return checked.validate(data);
  }

  static String pointer(String... steps) {
    StringBuilder pointer = new StringBuilder();
    for (String step : steps) {
      pointer.append('/').append(step.replace("~", "~0").replace("/", "~1"));
    }
    return pointer.toString();
  }

  private static String lower(HandlerType method) {
    return method.name().toLowerCase(Locale.ROOT);
  }
}
