package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.forward.EdgeRig;
import org.chordlog.forward.TestPlant;
import org.chordlog.harness.PostgresServer;
import org.chordlog.measure.alert.Alert;
import org.chordlog.notify.AlertWatch;
import org.chordlog.notify.WatchedPlant;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two services of one plant, its real database, a workshop computer, and a real mail server. */
@Tag("slow")
final class PlantServiceTest {
  @TempDir Path folder;
  private final PostgresServer server = PostgresServer.shared();
  private final Later clock = new Later();
  private MailProcess mails;
  private String database;
  private EdgeRig rig;
  private Path file;

  /** A clock that is put on. */
  private static final class Later extends Clock {
    private volatile Duration by = Duration.ZERO;

    @Override
    public Instant instant() {
      return Instant.now().plus(by);
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }

  @BeforeEach
  void deliver() throws Exception {
    mails = MailProcess.good(folder);
    file =
        Files.writeString(
            folder.resolve("alerts.yaml"),
            """
            site: Invented works
            pages: http://127.0.0.1:8080/
            timeZone: UTC
            people: [{name: Ann, mail: ann@works.example}]
            groups: [{name: all, audiences: [administrator, quality], people: [Ann]}]
            daily: {people: []}
            mail: {host: localhost, port: %d, from: chordlog@works.example, caFile: %s}
            """
                .formatted(mails.port(), mails.issuer()));
    database = TestPlant.create(server);
    rig = new EdgeRig(folder.resolve("edge"), TestPlant.EDGE, server.port(), server, database);
    rig.measure(3);
    rig.start();
    rig.complete();
    rig.close();
  }

  @AfterEach
  void close() {
    rig.close();
    mails.close();
  }

  private Plant plant() {
    String url = "postgresql://127.0.0.1:" + server.port() + "/" + database;
    return Stores.openPlant(PlantAddress.of(url, PostgresServer.SUPERUSER, () -> "", null));
  }

  private PlantService service() {
    return PlantService.start(
        plant(),
        WebSettings.onLoopback(0),
        new PlantService.Alerts(WatchedPlant.USUAL_SILENT, file, AlertWatch.Times.AT_ONCE, clock));
  }

  private List<Alert> open() {
    try (Plant plant = plant()) {
      return plant.own().alerts().open();
    }
  }

  private List<String> subjects() {
    return mails.mails().stream()
        .filter(each -> !MailProcess.header(each, "Subject").contains("watching"))
        .map(each -> MailProcess.header(each, "Subject"))
        .toList();
  }

  private String last() {
    List<String> all = mails.mails();
    return all.get(all.size() - 1).replace("=\r\n", "").replace("\r\n", "\n");
  }

  private static String get(PlantService service, String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + service.port() + path);
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString())
        .body();
  }

  @Test
  void onePersonGetsOneMailAboutASilentComputerAndOneWhenItIsBack() throws Exception {
    server.execute(database, "UPDATE plant.edge SET backlog_rows = 12345");
    long raised;
    try (PlantService first = service();
        PlantService second = service()) {
      clock.by = Duration.ofMinutes(16);
      Await.until(() -> !subjects().isEmpty(), () -> open());
      assertEquals(List.of("[Invented works] Workshop computer edge A: silent"), subjects());
      String mail = last();
      assertTrue(mail.contains("Nothing from edge A (north) since "), mail);
      assertTrue(mail.contains("; 12,345 records were waiting then."), mail);
      assertTrue(mail.contains("http://127.0.0.1:8080/alerts.html#1"), mail);
      raised = open().get(0).id();
      for (PlantService each : List.of(first, second)) {
        assertTrue(get(each, "/api/alerts").contains("\"id\":" + raised), "alerts");
        assertTrue(get(each, "/health").contains("\"watching\":true"), get(each, "/health"));
        assertTrue(get(each, "/metrics").contains("chordlog_alerts{state=\"unacknowledged\"} 1.0"));
      }
    }
    rig.store();
    rig.start();
    rig.complete();
    clock.by = Duration.ZERO;
    try (PlantService again = service()) {
      assertTrue(get(again, "/api/alerts").contains("\"id\":" + raised), "it is still there");
      Await.until(() -> get(again, "/health").contains("\"lastRound\":\""));
      clock.by = Duration.ofMinutes(2);
      Await.until(() -> open().isEmpty(), () -> open());
      Await.until(() -> subjects().size() == 2, () -> subjects());
      assertEquals("[Invented works] Over: Workshop computer edge A: silent", subjects().get(1));
      assertTrue(last().contains("There is nothing left to do."), last());
    }
  }
}
