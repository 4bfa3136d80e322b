package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.forward.EdgeRig;
import org.chordlog.forward.TestPlant;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of a plant while the first of its two servers dies and the second takes over. */
@Tag("slow")
final class PlantFailoverTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final String SECRET = "of an invented plant";
  private static final List<String> LOOKED_AT =
      List.of("/api/plant/jobs", "/edges/edge%20A/api/jobs", "/edges/edge%20A/api/jobs/1/readings");

  @TempDir Path directory;
  private PostgresServer primary;
  private PostgresServer standby;
  private PlantService pages;

  @BeforeEach
  void deliveredPlant() throws Exception {
    primary = PostgresServer.fresh();
    String database = TestPlant.create(primary);
    try (EdgeRig edge = new EdgeRig(directory, TestPlant.EDGE, primary.port(), primary, database)) {
      edge.measure(200);
      edge.start();
      edge.complete();
    }
    PlantAddress owner =
        PlantAddress.of(primary.url(database), PostgresServer.SUPERUSER, () -> "", null);
    String reader = Stores.plantAdmin(owner).addReader("pages", SECRET);
    standby = PostgresServer.standbyOf(primary);
    standby.start();
    String hosts =
        "postgresql://127.0.0.1:%d,127.0.0.1:%d/%s"
            .formatted(primary.port(), standby.port(), database);
    pages =
        PlantService.start(
            Stores.openPlant(PlantAddress.of(hosts, reader, () -> SECRET, null)),
            WebSettings.onLoopback(0));
  }

  @AfterEach
  void close() {
    pages.close();
    primary.close();
    standby.close();
  }

  private HttpResponse<String> get(String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + pages.port() + path);
    return CLIENT.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString());
  }

  private List<String> bodies() throws Exception {
    List<String> bodies = new ArrayList<>();
    for (String path : LOOKED_AT) {
      HttpResponse<String> answer = get(path);
      assertEquals(200, answer.statusCode(), path + " " + answer.body());
      bodies.add(answer.body());
    }
    return bodies;
  }

  /** Every page is as before or says in words why there is none now. */
  private boolean asBefore(List<String> before) throws Exception {
    boolean all = true;
    for (int i = 0; i < LOOKED_AT.size(); i++) {
      HttpResponse<String> answer = get(LOOKED_AT.get(i));
      if (answer.statusCode() == 200) {
        assertEquals(before.get(i), answer.body());
      } else {
        assertEquals(503, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("plant's database"), answer.body());
        all = false;
      }
    }
    return all;
  }

  @Test
  void pagesAnswerAgainByThemselvesWhenTheStandbyHasTakenOver() throws Exception {
    List<String> before = bodies();
    primary.kill();
    assertTrue(!asBefore(before), "a page was shown without a server");
    Await.until(
        () -> get("/health").body().contains("only standbys answer"), () -> get("/health").body());
    standby.promote();
    long began = System.nanoTime();
    Await.until(() -> asBefore(before), () -> get(LOOKED_AT.get(0)).body());
    System.out.printf("pages again after %.1f s%n", (System.nanoTime() - began) / 1e9);
    Await.until(
        () -> !get("/health").body().contains("can't be reached"), () -> get("/health").body());
  }
}
