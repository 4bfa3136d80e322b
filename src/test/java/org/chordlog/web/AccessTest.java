package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Problem;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
final class AccessTest {
  private static final String TOKEN = "a-token-of-this-test";

  @TempDir Path directory;

  @Test
  void everyRouteRefusesWhatCarriesNoRight() throws Exception {
    try (Served served = new Served(directory)) {
      List<String> open = new ArrayList<>();
      for (Route route : served.web.routes()) {
        String path = route.path().replaceAll("\\{\\w+}", "1") + quickly(route);
        for (String method :
            List.of("HEAD", "OPTIONS", "POST", "PUT", "DELETE", "PATCH", "TRACE")) {
          HttpResponse<String> answer = served.send(method, path, "");
          if (answer.statusCode() < 400 && !isAsGet(served, method, path)) {
            open.add(method + " " + path + " " + answer.statusCode());
          }
        }
      }
      assertEquals(List.of(), open);
    }
  }

  /** Told apart from a refusal of rights without working out the size of a study. */
  private static String quickly(Route route) {
    return route.path().equals("/api/study-size") ? "?expected=1&limit=80" : "";
  }

  /** HEAD is answered where GET is. */
  private static boolean isAsGet(Served served, String method, String path) throws Exception {
    return method.equals("HEAD") && served.get(path).statusCode() < 400;
  }

  @Test
  void filesAreGivenByGetOnly() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(200, served.get("/").statusCode());
      assertTrue(served.send("POST", "/index.html", "").statusCode() >= 400);
      assertTrue(
          served
              .get("/none.html")
              .headers()
              .firstValue("Content-Type")
              .orElseThrow()
              .startsWith(Problem.MEDIA_TYPE));
    }
  }

  @Test
  void aFormOfAnotherSiteChangesNothing() throws Exception {
    try (Served served = new Served(directory)) {
      String form = "application/x-www-form-urlencoded";
      assertEquals(403, served.send("POST", "/api/jobs", "a=b", "Content-Type", form).statusCode());
      String[] foreign = {
        Call.BY, "x", "Content-Type", "application/json", "Origin", "http://evil.test"
      };
      assertEquals(403, served.send("POST", "/api/jobs", "{}", foreign).statusCode());
      String[] plain = {Call.BY, "x", "Content-Type", "text/plain"};
      assertEquals(415, served.send("POST", "/api/jobs", "{}", plain).statusCode());
      assertEquals(0, served.json("/api/jobs").get("items").size());
    }
  }

  @Test
  void anotherHostNameOnLoopbackIsRefused() throws Exception {
    try (Served served = new Served(directory);
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.web.port())) {
      OutputStream out = socket.getOutputStream();
      out.write(
          "GET /api/stations HTTP/1.1\r\nHost: rebound.test\r\nConnection: close\r\n\r\n"
              .getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertTrue(answer.startsWith("HTTP/1.1 421"), answer);
    }
  }

  @Test
  void beyondLoopbackChangesNeedTheToken() throws Exception {
    assertThrows(BadInput.class, () -> new WebSettings("0.0.0.0", 0, "", 1, 1, 65_536));
    WebSettings open = new WebSettings("0.0.0.0", 0, TOKEN, 4, 4, 65_536);
    try (Served served = new Served(directory, open)) {
      String[] named = {Call.BY, "x", "Content-Type", "application/json"};
      HttpResponse<String> refused = served.send("POST", "/api/jobs", "{}", named);
      assertEquals(401, refused.statusCode());
      assertEquals("Bearer", refused.headers().firstValue("WWW-Authenticate").orElseThrow());
      String[] carrying = {
        Call.BY, "x", "Content-Type", "application/json", "Authorization", "Bearer " + TOKEN
      };
      assertEquals(400, served.send("POST", "/api/jobs", "{}", carrying).statusCode());
      assertEquals(200, served.get("/api/stations").statusCode());
    }
  }

  @Test
  void pagesCarryAStrictContentPolicy() throws Exception {
    try (Served served = new Served(directory)) {
      String policy = served.get("/").headers().firstValue("Content-Security-Policy").orElseThrow();
      assertTrue(policy.startsWith("default-src 'none'"), policy);
      assertTrue(!policy.contains("unsafe"), policy);
    }
  }

  @Test
  void aPortInUseIsBadInput() throws Exception {
    try (Served served = new Served(directory)) {
      WebSettings same = WebSettings.onLoopback(served.web.port());
      BadInput refused =
          assertThrows(BadInput.class, () -> new Served(directory.resolve("second"), same));
      assertEquals("port", refused.faults().get(0).field());
    }
  }
}
