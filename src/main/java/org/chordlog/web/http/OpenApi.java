package org.chordlog.web.http;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The API document (OpenAPI 3.1), made from the same rows that register the routes. */
public final class OpenApi {
  public static final String PATH = "/api/openapi.json";
  private static final Pattern PATH_PARAMETER = Pattern.compile("\\{(\\w+)}");
  private static final Set<String> NAMES = Set.of("station", "kind", "machine", "channel", "edge");
  private final Schemas schemas = new Schemas();

  private OpenApi() {}

  public static ObjectNode document(List<Route> routes, String version) {
    return new OpenApi().write(routes, version);
  }

  private ObjectNode write(List<Route> routes, String version) {
    ObjectNode document = Json.shared().createObjectNode();
    document.put("openapi", "3.1.0");
    document
        .putObject("info")
        .put("title", "Chordlog")
        .put("version", version)
        .put("description", ABOUT)
        .putObject("license")
        .put("name", "Apache-2.0")
        .put("identifier", "Apache-2.0");
    ObjectNode paths = document.putObject("paths");
    routes.forEach(route -> operation(route, paths.withObjectProperty(route.path())));
    ObjectNode components = document.putObject("components");
    components.set("schemas", schemas.all());
    components
        .putObject("securitySchemes")
        .putObject("token")
        .put("type", "http")
        .put("scheme", "bearer")
        .put("description", "needed to change anything where the service is bound beyond loopback");
    return document;
  }

  private void operation(Route route, ObjectNode path) {
    ObjectNode operation = path.putObject(route.method().name().toLowerCase(Locale.ROOT));
    operation.put("operationId", operationId(route));
    operation.put("summary", route.summary());
    operation.putArray("tags").add(tag(route));
    parameters(route, operation.putArray("parameters"));
    if (route.body() != null) {
      ObjectNode body = operation.putObject("requestBody").put("required", true);
      content(body, "application/json").set("schema", schemas.reference(route.body()));
    }
    if (route.changes()) {
      operation.putArray("security").addObject().putArray("token");
    }
    answers(route, operation.putObject("responses"));
  }

  private static void parameters(Route route, ArrayNode parameters) {
    Matcher matcher = PATH_PARAMETER.matcher(route.path());
    while (matcher.find()) {
      String name = matcher.group(1);
      String type = NAMES.contains(name) ? "string" : "integer";
      parameter(parameters, name, "path", type).put("required", true);
    }
    for (Route.Parameter each : route.query()) {
      parameter(parameters, each.name(), "query", each.type())
          .put("description", each.description());
    }
    if (Spoken.says(route.answer()) && !names(route, Call.UNIT)) {
      parameter(parameters, Call.UNIT, "query", "string").put("description", Route.UNIT_ASKED);
    }
    if (route.changes()) {
      parameter(parameters, Call.BY, "header", "string")
          .put("required", true)
          .put("description", "who acts, percent-encoded, 1 to 80 characters");
      parameter(parameters, SentTwice.KEY, "header", "string")
          .put("description", "8 to 100 characters; sent again with the same one, it is done once");
    }
  }

  private static boolean names(Route route, String parameter) {
    return route.query().stream().anyMatch(each -> each.name().equals(parameter));
  }

  private static ObjectNode parameter(ArrayNode all, String name, String in, String type) {
    ObjectNode parameter = all.addObject().put("name", name).put("in", in);
    parameter.putObject("schema").put("type", type);
    return parameter;
  }

  private void answers(Route route, ObjectNode responses) {
    ObjectNode good = responses.putObject(String.valueOf(route.status()));
    good.put("description", route.status() == 204 ? "done" : "as asked");
    if (route.answer() != null) {
      content(good, route.mediaType()).set("schema", shape(route, route.answer()));
    } else if (!route.mediaType().isEmpty()) {
      content(good, route.mediaType()).putObject("schema").put("type", "string");
    }
    ObjectNode problem = responses.putObject("default").put("description", "a problem document");
    content(problem, Problem.MEDIA_TYPE).set("schema", schemas.reference(Problem.class));
  }

  private ObjectNode shape(Route route, Class<?> type) {
    ObjectNode one = schemas.reference(type);
    if (route.shape() == Route.Shape.ONE) {
      return one;
    }
    ObjectNode list = Json.shared().createObjectNode().put("type", "array");
    list.set("items", one);
    return route.shape() == Route.Shape.LIST ? list : page(list);
  }

  private static ObjectNode page(ObjectNode list) {
    ObjectNode page = Json.shared().createObjectNode().put("type", "object");
    ObjectNode properties = page.putObject("properties");
    properties.set("items", list);
    properties
        .putObject("next")
        .put("description", "cursor of the next page, null at the end")
        .putArray("type")
        .add("integer")
        .add("null");
    page.putArray("required").add("items").add("next");
    return page;
  }

  private static ObjectNode content(ObjectNode of, String mediaType) {
    return of.withObjectProperty("content").withObjectProperty(mediaType);
  }

  private static String tag(Route route) {
    String[] steps = route.path().split("/", -1);
    int api = Arrays.asList(steps).indexOf("api");
    return api >= 0 && api + 1 < steps.length ? steps[api + 1] : "service";
  }

  private static String operationId(Route route) {
    String path = route.path().replaceAll("[^A-Za-z0-9]+", "_").replaceAll("_$", "");
    return route.method().name().toLowerCase(Locale.ROOT) + path;
  }

  private static final String ABOUT =
      "Lengths are in millimetres and named so; the sentences of any answer, refusals included, say"
          + " theirs in inches with unit=inch; times are ISO 8601 in UTC. Lists are paged by a"
          + " cursor. Snapshots carry an ETag. A request that changes something needs the header"
          + " Chordlog-By, comes from the same origin, and carries a token where the service is"
          + " bound beyond loopback. Whatever is refused is answered with a problem document (RFC"
          + " 9457) naming each field. Measure only with the rollers stopped and the drive locked"
          + " out; the machine's manual and local rules come first.";
}
