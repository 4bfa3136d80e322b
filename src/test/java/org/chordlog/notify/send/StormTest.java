package org.chordlog.notify.send;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.chordlog.cli.service.Service;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.mail.MailProcess;
import org.chordlog.notify.people.Retry;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Store;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * 64 stations lose their link 100 times an hour, each loss an alert of its own: worse than what the
 * rules let through. The clock is turned by the test; mails are sent to a real server and counted
 * there, those of a whole day without it.
 */
@Tag("slow")
final class StormTest {
  private static final int STATIONS = 64;
  private static final int LOSSES_AN_HOUR = 100;
  private static final Instant START = Instant.parse("2026-11-26T00:00:00Z");
  private static final Duration STEP = Duration.ofHours(1).dividedBy(LOSSES_AN_HOUR);

  /** Longer than the hour in which mails are counted. */
  private static final Duration HOUR_AND_A_QUARTER = Duration.ofMinutes(75);

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss Z", Locale.ENGLISH);

  @TempDir Path folder;
  private final TurnedClock clock = new TurnedClock(START);
  private final Map<String, List<Instant>> mails = new HashMap<>();
  private Alert[] open = new Alert[STATIONS];
  private int raised;

  /** By SMTP, then read back as the page of alerts reads them. */
  @Test
  void nobodyGetsMoreThanSixMailsAnHourAndNoAlertIsLost() throws Exception {
    Path data = folder.resolve("data");
    try (MailProcess server = MailProcess.good(folder)) {
      AlertSettings settings = Told.settings(Told.at(server), List.of());
      try (Store store = Stores.open(data);
          Dispatcher dispatcher = new Dispatcher(settings, store, clock)) {
        dispatcher.round();
        storm(store, HOUR_AND_A_QUARTER, dispatcher::round);
        arrived(server);
        assertFlood(store, HOUR_AND_A_QUARTER);
        assertEquals(0, store.outbox().counts().waiting() + store.outbox().counts().failed());
      }
    }
    mails.forEach((to, times) -> assertTrue(most(times) <= 6, () -> to + ": " + times));
    assertEquals(raised, onThePage(data));
  }

  @Test
  @Tag("long")
  void theSameForAWholeDay() {
    AlertSettings settings = Told.settings(Told.nowhere(), List.of());
    try (Store store = Stores.open(folder)) {
      Decider decider = new Decider(settings, store.alerts(), store.outbox());
      Composer composer = new Composer(settings.roster(), store.outbox());
      Courier courier = courier(store);
      decider.begin();
      storm(
          store,
          Duration.ofHours(24),
          () -> {
            decider.decide(clock.instant());
            composer.compose(clock.instant());
            courier.run();
          });
      assertFlood(store, Duration.ofHours(24));
    }
  }

  private void storm(Store store, Duration lasting, Runnable round) {
    while (clock.instant().isBefore(START.plus(lasting))) {
      lose(store);
      round.run();
      clock.turn(STEP);
    }
  }

  private void arrived(MailProcess server) {
    for (String mail : server.mails()) {
      mails
          .computeIfAbsent(MailProcess.header(mail, "To"), to -> new ArrayList<>())
          .add(DATE.parse(sentAt(mail), Instant::from));
    }
  }

  /** Without the name of the time zone behind its offset. */
  private static String sentAt(String mail) {
    return MailProcess.header(mail, "Date").replaceAll(" [(].*", "");
  }

  /** Different alerts that the service shows, page by page. */
  private static int onThePage(Path data) throws Exception {
    Set<Long> ids = new HashSet<>();
    WebSettings web = new WebSettings(WebSettings.LOOPBACK, 0, "", 4, 4, 65_536);
    try (Service service =
        Service.start(
            data,
            StoreSettings.USUAL,
            List.of(),
            web,
            StationKeeper.forThisRun(),
            StationClock.system())) {
      String page = "http://127.0.0.1:" + service.port() + "/api/alerts/history?limit=200";
      JsonNode answer = get(page);
      while (true) {
        answer.get("items").forEach(each -> ids.add(each.get("id").asLong()));
        if (answer.get("next").isNull()) {
          return ids.size();
        }
        answer = get(page + "&before=" + answer.get("next").asLong());
      }
    }
  }

  private static JsonNode get(String address) throws Exception {
    HttpRequest request = HttpRequest.newBuilder(URI.create(address)).build();
    return new ObjectMapper()
        .readTree(HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body());
  }

  private Courier courier(Store store) {
    return new Courier(
        Channel.MAIL,
        Retry.MAIL,
        store.outbox(),
        clock,
        (delivery, messages) -> {
          mails.computeIfAbsent(delivery.to().name(), to -> new ArrayList<>()).add(clock.instant());
          return new Outcome.Delivered();
        });
  }

  /** Each link that was lost in the last step is back, and each is lost again. */
  private void lose(Store store) {
    List<AlertEvent> events = new ArrayList<>();
    for (int i = 0; i < STATIONS; i++) {
      if (raised > 0) {
        events.add(Told.next(open[i], What.RETURNED, AlertState.NORMAL, clock.instant()));
      }
    }
    for (int i = 0; i < STATIONS; i++) {
      AlertKey key = AlertKey.station(AlertKind.LINK_LOST, "station " + i);
      events.add(Told.raised(key, AlertEvidence.NONE, clock.instant()));
    }
    List<AlertEvent> kept = store.alerts().add(events, Map.of());
    for (int i = 0; i < STATIONS; i++) {
      open[i] = kept.get(kept.size() - STATIONS + i).alert();
      raised++;
    }
  }

  private void assertFlood(Store store, Duration lasting) {
    assertEquals(STATIONS * lasting.dividedBy(STEP), raised);
    assertEquals(raised, store.alerts().raisedSince(0));
    assertEquals(STATIONS, store.alerts().open().size());
    assertEquals(raised, store.alerts().list(Long.MAX_VALUE, 1).get(0).id());
    List<Instant> bender = Objects.requireNonNull(mails.get(Told.BENDER.mail()));
    assertTrue(most(bender) <= 6, bender::toString);
    assertTrue(bender.size() >= lasting.toHours() * 3, bender.size() + " mails");
    assertTrue(store.outbox().counts().unsent() < STATIONS * LOSSES_AN_HOUR, "left over");
    System.out.printf(
        "storm: %d alerts, %d mails to one person in %s, %d persons told%n",
        raised, bender.size(), lasting, mails.size());
  }

  /** Most in any hour. */
  private static long most(List<Instant> times) {
    return times.stream()
        .mapToLong(
            from ->
                times.stream()
                    .filter(at -> !at.isBefore(from))
                    .filter(at -> !at.isAfter(from.plus(Duration.ofHours(1))))
                    .count())
        .max()
        .orElse(0);
  }
}
