package org.chordlog.notify.send;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.chordlog.Await;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From an alert in the store to a mail at a real server, with a clock that the test turns. */
@Tag("slow")
final class DispatcherTest {
  private static final AlertKey CREEP = AlertKey.machine(AlertKind.ROLLER_CREEPS, "PB-3\nBcc: x");

  @TempDir Path folder;
  private final TurnedClock clock = new TurnedClock(Instant.parse("2026-11-26T10:00:00Z"));
  private Store store;
  private MailProcess server;

  @BeforeEach
  void open() throws Exception {
    server = MailProcess.good(folder);
    store = Stores.open(folder.resolve("data"));
  }

  @AfterEach
  void close() {
    store.close();
    server.close();
  }

  private Dispatcher dispatcher() {
    return new Dispatcher(Told.settings(Told.at(server), List.of()), store, clock);
  }

  private Alert raise(AlertKey key) {
    return Told.add(store.alerts(), Told.raised(key, creep(), clock.instant()));
  }

  private static AlertEvidence creep() {
    Map<AlertFigure, Double> figures = new EnumMap<>(AlertFigure.class);
    figures.put(AlertFigure.SINCE_PIECE, 412.0);
    figures.put(AlertFigure.CHANGE_PER_PIECE, 2e-5);
    figures.put(AlertFigure.CHANGE_PER_PIECE_LOWER, 1e-5);
    figures.put(AlertFigure.CHANGE_PER_PIECE_UPPER, 3e-5);
    figures.put(AlertFigure.TARGET_MM, 1_800.0);
    return AlertEvidence.of(figures);
  }

  private Alert happens(Alert to, What what, AlertState state) {
    return Told.add(store.alerts(), Told.next(to, what, state, clock.instant()));
  }

  private List<String> heads(String name) {
    return server.mails().stream().map(each -> MailProcess.header(each, name)).toList();
  }

  @Test
  void anAlertIsOneMailThatSaysWhatToDoWithTheCaution() {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      raise(CREEP);
      dispatcher.round();
      dispatcher.round();
      assertEquals(List.of("fitter@shop.example"), heads("To"));
      String mail = server.mails().get(0).replace("=\r\n", "");
      assertEquals(
          "[Invented shop] Machine PB-3 Bcc: x: creeping", MailProcess.header(mail, "Subject"));
      assertEquals("", MailProcess.header(mail, "Bcc"));
      assertTrue(mail.contains("Raised on 26 November 2026, 10:00"), mail);
      assertTrue(mail.contains("Since piece 412 its pieces get"), mail);
      assertTrue(mail.contains("within 8 hours (by 26 November 2026, 18:00):"), mail);
      assertTrue(mail.contains("only with the rollers stopped and the drive locked out"), mail);
      assertTrue(mail.contains("https://chordlog.example/alerts.html#1"), mail);
      assertEquals(new DeliveryStatus(0, 1, 0, 0, List.of()), dispatcher.status());
    }
  }

  @Test
  void theNextAreToldWhereNobodySaysThatHeKnowsAndAllAreToldWhenItIsOver() {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      Alert alert = raise(CREEP);
      dispatcher.round();
      clock.turn(Duration.ofMinutes(59));
      dispatcher.round();
      assertEquals(1, server.mails().size());
      clock.turn(Duration.ofMinutes(1));
      dispatcher.round();
      assertEquals(List.of("fitter@shop.example", "bender@shop.example"), heads("To"));
      clock.turn(Duration.ofHours(12)); // the night shift has come
      dispatcher.round();
      assertEquals("night@shop.example", heads("To").get(2));
      happens(alert, What.RETURNED, AlertState.RETURNED_UNACKNOWLEDGED);
      dispatcher.round();
      assertEquals(6, server.mails().size());
      assertTrue(
          heads("Subject").get(3).contains("Over: Machine PB-3"), heads("Subject")::toString);
      String over = server.mails().get(3).replace("=\r\n", "");
      assertTrue(over.contains("nobody had acknowledged it."), over);
      assertTrue(over.contains("the drive locked out"), over);
      assertEquals(6, heads("Message-ID").stream().distinct().count());
      assertEquals(1, heads("References").stream().distinct().count());
    }
  }

  @Test
  void whoAcknowledgesStopsTheEscalationAndWhatComesBackAfterwardsIsToldAgain() {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      Alert alert = raise(CREEP);
      dispatcher.round();
      Alert known = happens(alert, What.ACKNOWLEDGED, AlertState.ACKNOWLEDGED);
      clock.turn(Duration.ofHours(9));
      dispatcher.round();
      assertEquals(1, server.mails().size());
      happens(known, What.AGAIN, AlertState.UNACKNOWLEDGED);
      dispatcher.round();
      assertEquals(List.of("fitter@shop.example", "fitter@shop.example"), heads("To"));
    }
  }

  /** It is as urgent as the limit then, and told again although nobody acknowledged it. */
  @Test
  void aCreepThatNearsALimitIsToldAgainWithTheLimit() {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      Alert alert = raise(CREEP);
      dispatcher.round();
      Map<AlertFigure, Double> near = new EnumMap<>(creep().figures());
      near.put(AlertFigure.TOLERANCE_MM, 12.0);
      near.put(AlertFigure.PIECES_LEFT, 40.0);
      near.put(AlertFigure.HOURS_LEFT, 0.8);
      near.put(AlertFigure.PIECES_LEFT_AT_LEAST, 22.0);
      clock.turn(Duration.ofHours(3));
      Alert worse = alert.withEvidence(AlertEvidence.of(near));
      Alert again = happens(worse, What.AGAIN, AlertState.UNACKNOWLEDGED);
      dispatcher.round();
      dispatcher.round();
      assertEquals(2, server.mails().size());
      String mail = server.mails().get(1).replace("=\r\n", "").replace("\r\n", " ");
      assertTrue(
          MailProcess.header(server.mails().get(1), "Subject").endsWith(": creeping, limit near"),
          heads("Subject")::toString);
      assertTrue(mail.contains("10:00, and again on 26 November 2026, 13:00"), mail);
      assertTrue(mail.contains("after about 40 more (0.8 h of bending), after 22 at the"), mail);
      assertTrue(mail.contains("within an hour (by 26 November 2026, 14:00):"), mail);
      assertTrue(mail.contains("Correct the rollers before the limit"), mail);
      happens(again, What.REPLACED, AlertState.NORMAL);
      dispatcher.round();
      assertEquals(2, server.mails().size()); // the alert that goes on is told in its place
    }
  }

  @Test
  void moreThanThreeAlertsAtOnceAreOneMail() {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      for (int i = 1; i <= 5; i++) {
        raise(AlertKey.machine(AlertKind.ROLLER_JUMPED, "M" + i));
      }
      dispatcher.round();
      assertEquals(1, server.mails().size()); // the night shift is not there
      String mail = server.mails().get(0);
      assertEquals(
          "[Invented shop] 5 alerts, 5 of them urgent", MailProcess.header(mail, "Subject"));
      assertTrue(
          mail.contains("- Machine M5: jumped, raised on 26 November 2026, 10:00; urgent"), mail);
      assertTrue(mail.replace("=\r\n", "").contains("Before anybody goes to a machine"), mail);
    }
  }

  @Test
  void eachDayOneMailSaysThatAllIsWatched() {
    AlertSettings settings = Told.daily(Told.settings(Told.at(server), List.of()));
    try (Dispatcher dispatcher = new Dispatcher(settings, store, clock)) {
      dispatcher.round();
      dispatcher.round();
      assertEquals(List.of("[Invented shop] Chordlog is watching"), heads("Subject"));
      assertTrue(server.mails().get(0).contains("Alerts raised: 0"));
      clock.turn(Duration.ofHours(20)); // 06:00 of the next day
      dispatcher.round();
      assertEquals(1, server.mails().size());
      clock.turn(Duration.ofHours(1));
      dispatcher.round();
      assertEquals(2, server.mails().size());
    }
  }

  @Test
  void whatIsRefusedForEverIsSaidAndTheNextAreToldAtOnce() throws Exception {
    server.close();
    server = MailProcess.that("550", folder);
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      raise(CREEP);
      dispatcher.round();
      dispatcher.round();
      DeliveryStatus status = dispatcher.status();
      assertEquals(2, status.failed(), status::toString);
      assertEquals(2, status.failedLately(), status::toString); // the fitter's, then the bender's
      String problem = status.problems().get(1);
      assertTrue(problem.startsWith("not delivered to fitter@shop.example: 127.0.0.1:"), problem);
      assertTrue(problem.contains("550 5.1.1 no such mailbox"), problem);
    }
  }

  @Test
  void whatCannotBeDeliveredIsTriedAgainAndOneMailHasAllThatGathered() {
    server.close();
    Alert first;
    try (Dispatcher dispatcher =
        new Dispatcher(Told.settings(Told.nowhere(), List.of()), store, clock)) {
      dispatcher.round();
      first = raise(CREEP);
      dispatcher.round();
      raise(AlertKey.machine(AlertKind.ROLLER_CREEPS, "M2"));
      raise(AlertKey.machine(AlertKind.ROLLER_CREEPS, "M3"));
      dispatcher.round();
      DeliveryStatus status = dispatcher.status();
      assertEquals(3, status.waiting(), status::toString);
      assertTrue(
          status.problems().get(0).startsWith("not yet delivered to fitter"), status::toString);
    }
    assertTrue(first.open());
  }

  /** The service's own threads, and a channel that works again after a while. */
  @Test
  void threadsDeliverByThemselvesAndEndWithTheService() throws Exception {
    try (Dispatcher dispatcher = dispatcher()) {
      dispatcher.round();
      raise(CREEP);
      dispatcher.start();
      Await.until(() -> server.mails().size() == 1);
    }
    Await.until(
        () ->
            Thread.getAllStackTraces().keySet().stream()
                .noneMatch(each -> each.getName().startsWith("alerts-")));
  }
}
