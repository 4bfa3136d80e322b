package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Call;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that are nearly right, and what the server itself answers before any route is asked. */
final class SmallFaultsTest {
  @TempDir static Path directory;
  private static Served served;
  private static Job job;

  @BeforeAll
  static void serve() {
    served = new Served(directory);
    job = served.job();
    served.readings(job, 5);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** All of the head of the answer. */
  private static List<String> head(String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.web.port())) {
      socket.setSoTimeout(30_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      return new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))
          .lines()
          .takeWhile(line -> !line.isEmpty())
          .toList();
    }
  }

  /** What is no HTTP, an address of 20,000 characters, a head of as many. */
  @ParameterizedTest
  @CsvSource({
    "400, 'GET /\u0001 HTTP/1.1', ''",
    "414, 'GET /%s HTTP/1.1', ''",
    "431, 'GET / HTTP/1.1', 'X-A: %s'"
  })
  void whatTheServerItselfRefusesCarriesTheSameHeaders(int status, String line, String header)
      throws Exception {
    String request = line + "\r\nHost: localhost\r\n" + (header.isEmpty() ? "" : header + "\r\n");
    List<String> head = head(request.replace("%s", "x".repeat(20_000)) + "\r\n");
    assertTrue(head.get(0).contains(" " + status), head::toString);
    for (String wanted :
        List.of("X-Content-Type-Options: nosniff", "Content-Security-Policy: default-src 'none'")) {
      assertTrue(head.stream().anyMatch(each -> each.startsWith(wanted)), head::toString);
    }
  }

  @Test
  void aTypeThatOnlyBeginsLikeJsonIsRefused() throws Exception {
    for (String type :
        List.of("application/jsonfoo", "application/json-patch+json", "text/plain")) {
      HttpResponse<String> answer =
          served.send("POST", "/api/jobs", "{}", Call.BY, "x", "Content-Type", type);
      assertEquals(415, answer.statusCode(), type);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"report.pdf", "readings.csv"})
  void reportsAndTablesAreNotKeptByBrowsers(String file) throws Exception {
    HttpResponse<String> answer = served.get("/api/jobs/" + job.id() + "/" + file);
    assertEquals(200, answer.statusCode());
    assertEquals("no-store", answer.headers().firstValue("Cache-Control").orElseThrow());
  }

  @Test
  void aHeadIsAnsweredAsALookWithoutItsBody() throws Exception {
    HttpResponse<String> answer = served.send("HEAD", "/api/jobs", "");
    assertEquals(200, answer.statusCode());
    assertEquals("", answer.body());
    assertEquals(405, served.send("HEAD", "/api/stations/A/zero", "").statusCode());
  }
}
