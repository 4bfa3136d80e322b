package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.notify.mail.MailProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Mails from the jar as a user has it: a jar made of many loses what the mail library looks up in
 * files of the same name ("no object DCH for MIME type multipart").
 */
final class AlertsIT {
  @TempDir Path folder;

  private void settings(MailProcess server) throws Exception {
    Path unused =
        Files.writeString(
            folder.resolve("alerts.yaml"),
            """
            site: Invented shop
            pages: http://127.0.0.1:8080/
            timeZone: UTC
            people: [{name: A. Fitter, mail: fitter@shop.example}]
            groups: [{name: all, audiences: [maintenance], last: true, people: [A. Fitter]}]
            daily: {at: "00:00"}
            mail: {host: localhost, port: %d, from: chordlog@shop.example, caFile: %s}
            """
                .formatted(server.port(), server.issuer()));
  }

  @Test
  void theJarSendsMailsInTwoForms() throws Exception {
    try (MailProcess server = MailProcess.good(folder)) {
      settings(server);
      String file = folder.resolve("alerts.yaml").toString();
      ServiceProcess.Said said =
          ServiceProcess.run("alerts", "--check", "--send", "--json", "--alerts", file);
      assertEquals(0, said.exitCode(), said.out());
      JsonNode checked = new ObjectMapper().readTree(said.out()).get("checked");
      assertEquals(2, checked.size(), said.out());
      String mail = server.mails().get(0);
      assertTrue(
          MailProcess.header(mail, "Content-Type").startsWith("multipart/alternative"), mail);
      assertTrue(mail.contains("Content-Type: text/plain"), mail);
      assertTrue(mail.contains("Content-Type: text/html"), mail);
    }
  }

  /** The file beside the station file is found, and the daily mail comes by itself. */
  @Test
  void theServiceTellsByItself() throws Exception {
    try (MailProcess server = MailProcess.good(folder)) {
      settings(server);
      List<String> command = ServiceProcess.briefJar();
      command.addAll(List.of("serve", "--json", "--port", "0", "--data", folder.toString()));
      try (ServiceProcess service = ServiceProcess.start(command, folder.resolve("log"))) {
        Await.until(() -> server.mails().size() == 1, service::logged);
        assertEquals(
            "[Invented shop] Chordlog is watching",
            MailProcess.header(server.mails().get(0), "Subject"));
        Await.until(() -> service.body("/metrics").contains("state=\"delivered\"} 1.0"));
        JsonNode messages = new ObjectMapper().readTree(service.body("/health")).get("messages");
        assertEquals(1, messages.get("delivered").asInt(), messages::toString);
        assertEquals(0, messages.get("waiting").asInt(), messages::toString);
      }
    }
  }
}
