package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import org.chordlog.web.http.Json;

/** A client that reads events one after the other, as the HTML standard says. */
final class EventStream implements AutoCloseable {
  private final InputStream body;
  private final BufferedReader lines;

  private EventStream(InputStream body) {
    this.body = body;
    this.lines = new BufferedReader(new InputStreamReader(body, StandardCharsets.UTF_8));
  }

  /** One event; the id is 0 where it has none. */
  record Event(String name, long id, JsonNode data) {}

  static EventStream open(Served served, String path, String... headers) throws Exception {
    HttpRequest.Builder request = HttpRequest.newBuilder(served.uri(path));
    HttpResponse<InputStream> answer =
        served.client.send(
            (headers.length == 0 ? request : request.headers(headers)).build(),
            BodyHandlers.ofInputStream());
    if (answer.statusCode() != 200) {
      throw new AssertionError("answered " + answer.statusCode());
    }
    return new EventStream(answer.body());
  }

  /** The next event of that name. */
  Event next(String name) throws IOException {
    Event event = next();
    while (!event.name().equals(name)) {
      event = next();
    }
    return event;
  }

  Event next() throws IOException {
    String name = "message";
    long id = 0;
    StringBuilder data = new StringBuilder();
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      if (line.startsWith("event: ")) {
        name = line.substring(7);
      } else if (line.startsWith("id: ")) {
        id = Long.parseLong(line.substring(4).split("-", 2)[0]);
      } else if (line.startsWith("data: ")) {
        data.append(line, 6, line.length());
      } else if (line.isEmpty() && data.length() > 0) {
        return new Event(name, id, Json.shared().readTree(data.toString()));
      }
    }
    throw new IOException("the stream ended");
  }

  @Override
  public void close() throws IOException {
    body.close();
  }
}
