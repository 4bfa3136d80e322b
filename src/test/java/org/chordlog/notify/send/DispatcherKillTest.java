package org.chordlog.notify.send;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;

/** Killed after a mail was sent and before that was noted: it is sent again under the same id. */
@Tag("slow")
final class DispatcherKillTest {
  @TempDir(factory = TempDirFactory.Standard.class)
  Path folder;

  @Test
  void aKillBetweenSendingAndNotingSendsTheSameMailAgain() throws Exception {
    Path data = folder.resolve("data");
    try (MailProcess server = MailProcess.good(folder)) {
      decide(data, server);
      sendAndBeKilled(data, server);
      assertEquals(1, server.mails().size());
      try (Store store = Stores.open(data);
          Dispatcher dispatcher = dispatcher(store, server)) {
        assertEquals(new DeliveryStatus(1, 0, 0, 0, List.of()), dispatcher.status());
        dispatcher.round();
        assertEquals(new DeliveryStatus(0, 1, 0, 0, List.of()), dispatcher.status());
      }
      List<String> ids =
          server.mails().stream().map(each -> MailProcess.header(each, "Message-ID")).toList();
      assertEquals(List.of(ids.get(0), ids.get(0)), ids);
      assertEquals(
          MailProcess.header(server.mails().get(0), "Date"),
          MailProcess.header(server.mails().get(1), "Date"));
    }
  }

  private static Dispatcher dispatcher(Store store, MailProcess server) {
    return new Dispatcher(Told.settings(Told.at(server), List.of()), store, Clock.systemUTC());
  }

  /** Raises an alert and stores its mail, without sending. */
  private static void decide(Path data, MailProcess server) {
    Instant now = Instant.now();
    try (Store store = Stores.open(data)) {
      var settings = Told.settings(Told.at(server), List.of());
      Decider decider = new Decider(settings, store.alerts(), store.outbox());
      decider.begin();
      AlertKey key = AlertKey.station(AlertKind.LINK_LOST, "A");
      Alert unused = Told.add(store.alerts(), Told.raised(key, AlertEvidence.NONE, now));
      decider.decide(now);
      new Composer(settings.roster(), store.outbox()).compose(now);
    }
  }

  private static void sendAndBeKilled(Path data, MailProcess server) throws Exception {
    List<String> command =
        ServiceProcess.briefJava(System.getProperty("java.class.path"), "-Xmx256m");
    command.addAll(
        List.of(
            KilledDispatcher.class.getName(),
            data.toString(),
            Integer.toString(server.port()),
            server.issuer().toString()));
    Process process =
        Children.start(new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT));
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    assertEquals("sent", said.readLine());
    process.toHandle().destroyForcibly();
    Await.end(process);
  }
}
