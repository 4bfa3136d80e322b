package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file of alerts is changed while people are told, with a real mail server. */
@Tag("slow")
final class TellingTest {
  @TempDir Path folder;

  private Path write(MailProcess server, String people, String groups) throws Exception {
    return Files.writeString(
        folder.resolve("alerts.yaml"),
        """
        site: Invented shop
        pages: http://127.0.0.1:8080/
        timeZone: UTC
        people: [%s]
        groups: [{name: all, audiences: [administrator], people: [%s]}]
        daily: {people: []}
        mail: {host: localhost, port: %d, from: chordlog@shop.example, caFile: %s}
        """
            .formatted(people, groups, server.port(), server.issuer()));
  }

  private static void raise(Store store, AlertKind kind) {
    long now = ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
    Alert raised =
        Alert.raised(AlertKey.service(kind), AlertStatus.raised(now, false), AlertEvidence.NONE);
    AlertEvent unused =
        store
            .alerts()
            .add(
                new AlertEvent(
                    AlertEvent.What.RAISED,
                    AlertState.NORMAL,
                    raised,
                    new Recorded(now, AlertEvent.SERVICE),
                    ""));
  }

  private static List<String> recipients(MailProcess server) {
    return server.mails().stream()
        .filter(each -> !MailProcess.header(each, "Subject").contains("watching"))
        .map(each -> MailProcess.header(each, "To"))
        .toList();
  }

  @Test
  void aFileThatChangesIsInUseWithoutARestartAndOneWithAMistakeChangesNothing() throws Exception {
    String ann = "{name: Ann, mail: ann@shop.example}";
    String bob = "{name: Bob, mail: bob@shop.example}";
    try (MailProcess server = MailProcess.good(folder);
        Store store = Stores.open(folder.resolve("data"));
        Telling telling =
            new Telling(
                AlertSource.read(write(server, ann, "Ann")),
                store,
                Clock.systemUTC(),
                new Telling.Pace(Duration.ofMillis(50), Duration.ofMillis(50)))) {
      raise(store, AlertKind.DISK_LOW);
      Await.until(() -> recipients(server).equals(List.of("ann@shop.example")));
      Path unused = write(server, bob, "Nobody");
      Await.until(() -> !telling.status().problems().isEmpty());
      String problem = telling.status().problems().get(0);
      assertTrue(problem.startsWith("alerts.yaml changed, but is not in use: "), problem);
      assertTrue(problem.contains("Nobody is not a name under people"), problem);
      raise(store, AlertKind.BACKUP_OLD);
      Await.until(() -> recipients(server).size() == 2);
      assertEquals("ann@shop.example", recipients(server).get(1));
      unused = write(server, ann + ", " + bob, "Bob");
      Await.until(() -> telling.status().problems().isEmpty());
      raise(store, AlertKind.CERTIFICATE_ENDS);
      Await.until(() -> recipients(server).contains("bob@shop.example"));
    }
  }
}
