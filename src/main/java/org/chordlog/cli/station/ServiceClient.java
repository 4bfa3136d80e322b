package org.chordlog.cli.station;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import javax.net.ssl.SSLException;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.trust.IssuerFile;
import org.jspecify.annotations.Nullable;

/** Asks a running service about one station, through its API. */
final class ServiceClient {
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final int BAD_REQUEST = 400;
  private static final int UNAUTHORIZED = 401;
  private static final int NOT_FOUND = 404;
  private static final Set<String> SCHEMES = Set.of("http", "https");

  private final URI service;
  private final String station;
  private final String by;
  private final String token;
  private String unit = "mm";
  private final HttpClient http;

  /** {@code caFile} vouches for a service at an https address; null: those that Java trusts. */
  ServiceClient(URI service, String station, String by, String token, @Nullable Path caFile) {
    if (service.getHost() == null || !SCHEMES.contains(String.valueOf(service.getScheme()))) {
      throw new BadInput(
          "--service",
          service,
          "is not an address",
          "as http://127.0.0.1:8080 or https://chordlog.example:8443");
    }
    HttpClient.Builder builder = HttpClient.newBuilder().connectTimeout(PATIENCE);
    http =
        (caFile == null ? builder : builder.sslContext(IssuerFile.trusting("--ca-file", caFile)))
            .build();
    this.service = service;
    this.station = station;
    this.by = by;
    this.token = token;
  }

  /** Answers say their sentences in this unit, mm or inch. */
  ServiceClient in(String wanted) {
    unit = wanted;
    return this;
  }

  JsonNode get(String path) {
    return send(request(path).GET());
  }

  /** As it is, such as a file of rows. */
  String text(String path) {
    HttpResponse<String> answer = answer(request(path).GET());
    return answer.statusCode() < BAD_REQUEST
        ? answer.body()
        : refused(answer.statusCode(), tree(answer.body())).asText();
  }

  JsonNode post(String path, Map<String, ?> body) {
    return send(
        request(path)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(JsonText.of(body))));
  }

  /** Of this station. */
  JsonNode getHere(String path) {
    return get(here(path));
  }

  JsonNode postHere(String path, Map<String, ?> body) {
    return post(here(path), body);
  }

  JsonNode delete(String path) {
    return send(request(path).DELETE());
  }

  JsonNode deleteHere(String path) {
    return delete(here(path));
  }

  private String here(String path) {
    return "/api/stations/" + encoded(station) + path;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(service.resolve(inUnit(path)))
            .timeout(PATIENCE)
            .header("Chordlog-By", encoded(by));
    return token.isEmpty() ? request : request.header("Authorization", "Bearer " + token);
  }

  private String inUnit(String path) {
    return path + (path.contains("?") ? "&" : "?") + "unit=" + unit;
  }

  private JsonNode send(HttpRequest.Builder request) {
    HttpResponse<String> answer = answer(request);
    JsonNode body = tree(answer.body());
    return answer.statusCode() < BAD_REQUEST ? body : refused(answer.statusCode(), body);
  }

  private JsonNode tree(String text) {
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("What answers at " + service + " is not Chordlog.", e);
    }
  }

  private HttpResponse<String> answer(HttpRequest.Builder request) {
    try {
      return http.send(request.build(), BodyHandlers.ofString());
    } catch (SSLException e) {
      throw new IllegalStateException(
          "The service at "
              + service
              + " can't be trusted: "
              + e.getMessage()
              + ". Where its certificate is of your own issuer, give that one's by --ca-file.",
          e);
    } catch (IOException e) {
      throw new IllegalStateException("No service answers at " + service + ".", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Stopped while waiting for " + service + ".", e);
    }
  }

  /** A bad request as this command's own bad input, anything else as a fault. */
  private JsonNode refused(int status, JsonNode problem) {
    List<Fault> faults = new ArrayList<>();
    for (JsonNode f : problem.path("faults")) {
      faults.add(
          new Fault(text(f, "field"), text(f, "value"), text(f, "problem"), text(f, "allowed")));
    }
    if (status == BAD_REQUEST && !faults.isEmpty()) {
      throw new BadInput(faults);
    }
    if (status == NOT_FOUND && !station.isEmpty()) {
      refuseUnknownStation();
    }
    throw new NoSuchElementException(
        status == UNAUTHORIZED && token.isEmpty()
            ? "People sign in at this service: give the token of a program by --token-file FILE."
            : text(problem, "detail"));
  }

  private void refuseUnknownStation() {
    HttpResponse<String> all = answer(request("/api/stations").GET());
    if (all.statusCode() < BAD_REQUEST) {
      List<String> names = tree(all.body()).findValuesAsText("station");
      if (!names.contains(station)) {
        throw new BadInput(
            "--station", station, "is not a station of this service", String.join(", ", names));
      }
    }
  }

  private static String text(JsonNode node, String field) {
    return node.path(field).asText();
  }
}
