package org.chordlog.notify.send;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.people.Retry;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * 64 stations lose their link 100 times an hour, each loss an alert of its own: worse than what the
 * rules let through. The clock is turned by the test; mails are counted, not sent.
 */
@Tag("slow")
final class StormTest {
  private static final int STATIONS = 64;
  private static final int LOSSES_AN_HOUR = 100;
  private static final Instant START = Instant.parse("2026-11-26T00:00:00Z");
  private static final Duration STEP = Duration.ofHours(1).dividedBy(LOSSES_AN_HOUR);

  @TempDir Path folder;
  private final TurnedClock clock = new TurnedClock(START);
  private final Map<String, List<Instant>> mails = new HashMap<>();
  private Alert[] open = new Alert[STATIONS];
  private int raised;

  @Test
  void nobodyGetsMoreThanSixMailsAnHourAndNoAlertIsLost() {
    storm(2);
  }

  @Test
  @Tag("long")
  void theSameForAWholeDay() {
    storm(24);
  }

  void storm(int hours) {
    AlertSettings settings = Told.settings(Told.nowhere(), List.of());
    try (Store store = Stores.open(folder)) {
      Decider decider = new Decider(settings, store.alerts(), store.outbox());
      Composer composer = new Composer(settings.roster(), store.outbox());
      Courier courier = courier(store);
      decider.begin();
      while (clock.instant().isBefore(START.plus(Duration.ofHours(hours)))) {
        lose(store);
        decider.decide(clock.instant());
        composer.compose(clock.instant());
        courier.run();
        clock.turn(STEP);
      }
      assertFlood(store, hours);
    }
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

  private void assertFlood(Store store, int hours) {
    assertEquals(STATIONS * LOSSES_AN_HOUR * hours, raised);
    assertEquals(raised, store.alerts().raisedSince(0));
    assertEquals(STATIONS, store.alerts().open().size());
    assertEquals(raised, store.alerts().list(Long.MAX_VALUE, 1).get(0).id());
    List<Instant> bender = Objects.requireNonNull(mails.get(Told.BENDER.mail()));
    TreeSet<Instant> times = new TreeSet<>(bender);
    for (Instant from : times) {
      long hour =
          bender.stream()
              .filter(at -> !at.isBefore(from) && !at.isAfter(from.plus(Duration.ofHours(1))))
              .count();
      assertTrue(hour <= 6, hour + " mails from " + from);
    }
    assertTrue(bender.size() >= hours * 3, bender.size() + " mails");
    assertTrue(store.outbox().counts().unsent() < STATIONS * LOSSES_AN_HOUR, "left over");
    System.out.printf(
        "storm: %d alerts, %d mails to one person in %d h, %d persons told%n",
        raised, bender.size(), hours, mails.size());
  }
}
