package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.notify.webhook.WebhookProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that shows and tries the channels, against a real mail server and receiver. */
final class AlertsCommandTest {
  private static final String SECRET = "whsec_b2xkIGludmVudGVkIHNlY3JldCBvZiBhIHRlc3QhISE=";

  @TempDir Path folder;

  /** With people and a mail server at that port, and a webhook there. */
  private Path file(int mailPort, Path issuer, String hook) throws Exception {
    Path secret = Files.writeString(folder.resolve("secret"), SECRET);
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
    return Files.writeString(
        folder.resolve("alerts.yaml"),
        """
        site: Invented shop
        pages: https://chordlog.example/
        timeZone: Europe/London
        people: [{name: A. Fitter, mail: fitter@shop.example}, {name: B, mail: b@shop.example}]
        groups: [{name: all, audiences: [maintenance], last: true, people: [A. Fitter, B]}]
        mail: {host: 127.0.0.1, port: %d, from: chordlog@shop.example, caFile: %s}
        webhooks: [{name: planner, url: "%s", secretFiles: [secret]}]
        """
            .formatted(mailPort, issuer, hook));
  }

  private Ran alerts(String... more) {
    return Ran.command(
        List.of("alerts", "--alerts", folder.resolve("alerts.yaml").toString()), more);
  }

  @Test
  void withoutACheckItSaysWhoIsToldAndConnectsToNobody() throws Exception {
    try (MailProcess server = MailProcess.good(folder)) {
      Path unused = file(server.port(), server.issuer(), "https://planner.example/hook");
    }
    Ran shown = alerts();
    assertEquals(ExitCode.WELL, shown.code(), shown.err());
    assertTrue(shown.out().contains("Told now: A. Fitter, B\n"), shown.out());
    assertTrue(shown.out().contains("Maintenance: A. Fitter, B\n"), shown.out());
    assertTrue(shown.out().contains("Gauge keeper: nobody\n"), shown.out());
    assertTrue(shown.out().contains("Webhooks: planner\n"), shown.out());
  }

  @Test
  void withoutWebhooksItSaysNone() throws Exception {
    Files.writeString(
        folder.resolve("alerts.yaml"),
        """
        site: Invented shop
        pages: https://chordlog.example/
        timeZone: Europe/London
        people: [{name: A. Fitter, mail: fitter@shop.example}]
        groups: [{name: all, audiences: [maintenance], last: true, people: [A. Fitter]}]
        mail: {host: 127.0.0.1, from: chordlog@shop.example}
        """);
    Ran shown = alerts();
    assertTrue(shown.out().contains("\nWebhooks: none\n"), shown.out() + shown.err());
  }

  @Test
  void aCheckSaysWhatItSawAndSendsNothing() throws Exception {
    try (MailProcess server = MailProcess.good(folder);
        WebhookProcess receiver = WebhookProcess.answering(folder, "204", SECRET)) {
      Path unused = file(server.port(), server.issuer(), receiver.address().toString());
      Ran checked = alerts("--check");
      assertEquals(ExitCode.WELL, checked.code(), checked.out() + checked.err());
      assertTrue(
          checked.out().contains(": answers by STARTTLS with a good certificate\n"), checked.out());
      assertTrue(checked.out().contains("webhook planner: can be reached\n"), checked.out());
      assertEquals(List.of(), server.mails());
    }
  }

  @Test
  void withSendEverybodyGetsATestMessage() throws Exception {
    try (MailProcess server = MailProcess.good(folder);
        WebhookProcess receiver = WebhookProcess.answering(folder, "204", SECRET)) {
      Path unused = file(server.port(), server.issuer(), receiver.address().toString());
      Ran sent = alerts("--check", "--send", "--json");
      assertEquals(ExitCode.WELL, sent.code(), sent.out() + sent.err());
      JsonNode checked = new JsonMapper().readTree(sent.out()).get("checked");
      assertEquals(5, checked.size(), sent.out());
      assertEquals("b@shop.example", checked.get(3).get("to").asText());
      assertEquals(2, server.mails().size());
      assertEquals(
          "[Invented shop] Test of alerts", MailProcess.header(server.mails().get(0), "Subject"));
      assertTrue(receiver.next().contains("\"good\""));
    }
  }

  @Test
  void whatDoesNotWorkIsToldInWords() throws Exception {
    MailProcess server = MailProcess.good(folder);
    server.close();
    Path unused = file(server.port(), server.issuer(), "http://127.0.0.1:1/");
    Ran checked = alerts("--check");
    assertEquals(ExitCode.FAULT, checked.code());
    assertTrue(
        checked.out().contains("NOT WELL: 127.0.0.1:" + server.port() + " takes no connection"),
        checked.out());
    assertTrue(
        checked.out().contains("webhook planner: NOT WELL: 127.0.0.1:1 takes no connection"),
        checked.out());
  }

  @Test
  void noFileAndASendAloneAreRefused() throws Exception {
    Ran none = alerts();
    assertEquals(ExitCode.BAD_INPUT, none.code());
    assertTrue(none.err().contains("does not exist, so nobody is told of alerts"), none.err());
    Ran alone = alerts("--send");
    assertEquals(ExitCode.BAD_INPUT, alone.code());
    assertTrue(alone.err().contains("--check --send"), alone.err());
  }
}
