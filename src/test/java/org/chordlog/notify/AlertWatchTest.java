package org.chordlog.notify;

import static org.chordlog.notify.WatchedShop.MINUTE;
import static org.chordlog.notify.WatchedShop.SECOND;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Face;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** The watch over a store on disk and the service's own statistics. */
final class AlertWatchTest extends WatchOfShop {
  @Test
  void aLinkThatIsLostForTenMinutesWhileAJobIsOpenIsToldAndOverWhenItIsBack() {
    shop.store.jobs().activate("A", shop.job.id());
    shop.link("A", LinkState.LOST);
    shop.round(9 * MINUTE);
    assertEquals(List.of(), shop.events());
    shop.round(MINUTE);
    shop.round(5 * SECOND);
    Alert alert = only();
    assertEquals("No such port.", alert.evidence().detail());
    shop.link("A", LinkState.OPEN);
    shop.round(5 * SECOND);
    shop.round(5 * SECOND);
    assertEquals(List.of("RAISED LINK_LOST A"), shop.events());
    shop.round(MINUTE);
    assertEquals(List.of("RAISED LINK_LOST A", "RETURNED LINK_LOST A"), shop.events());
    assertEquals(List.of(), shop.store.alerts().open());
  }

  @Test
  void aSwitchThatTakesTwentyStationsAlongIsOneAlert() {
    shop.store.jobs().activate("S3", shop.job.id());
    for (int i = 0; i < 20; i++) {
      shop.link("S" + i, LinkState.LOST);
      shop.now += SECOND;
    }
    for (int i = 0; i < 40; i++) {
      shop.round(30 * SECOND);
    }
    assertEquals(List.of("RAISED NETWORK_LOST"), shop.events());
    assertEquals(20.0, only().evidence().figure(AlertFigure.STATIONS));
  }

  @Test
  void aFailedCheckIsToldAndOverWithAPassedOneButStillAsksForAWord() {
    shop.link("A", LinkState.OPEN);
    check(2.5, false);
    shop.bend(3, 0, 0);
    shop.round(MINUTE);
    Alert alert = only();
    assertEquals(2.5, alert.evidence().figure(AlertFigure.DEVIATION_MM));
    assertEquals(3.0, alert.evidence().figure(AlertFigure.READINGS_IN_DOUBT));
    check(0.1, true);
    shop.round(MINUTE);
    assertEquals(AlertState.RETURNED_UNACKNOWLEDGED, only().state());
  }

  private void check(double off, boolean passed) {
    long master =
        shop.store.gauges().masters().isEmpty()
            ? shop.store.gauges().add(new Master(0, "disc", Face.OUTER, 1800, 0.05), "me").id()
            : 1;
    InterimCheck unused =
        shop.store
            .gauges()
            .add(
                new InterimCheck(
                    0,
                    "A",
                    shop.bridge.id(),
                    master,
                    new InterimCheck.Comparison(1800 + off, 1800, 1, passed),
                    new Recorded(shop.now, "me")));
    shop.now += SECOND;
  }

  @Test
  void acknowledgedPutAsideAndBackAreSeenByTheWatch() {
    shop.outside = new Watched.Outside(() -> 10L, () -> null, List::of);
    shop.round(0);
    Recorded by = new Recorded(shop.now, "Ann");
    Alert alert = only();
    shop.store.alerts().add(AlertActions.shelve(alert, by, "ordered", shop.now + 2 * MINUTE));
    shop.round(MINUTE);
    assertEquals(AlertState.SHELVED, only().state());
    shop.restart();
    shop.round(MINUTE);
    assertEquals(AlertState.UNACKNOWLEDGED, only().state());
    shop.outside = new Watched.Outside(() -> 3L, () -> null, List::of);
    shop.round(0);
    assertEquals(
        List.of(
            "RAISED CERTIFICATE_ENDS",
            "SHELVED CERTIFICATE_ENDS",
            "BACK_FROM_SHELF CERTIFICATE_ENDS",
            "AGAIN CERTIFICATE_ENDS"),
        shop.events());
  }

  @Test
  void nothingIsRaisedForFiveMinutesAfterAStartAndWhatIsOpenStays() {
    shop.close();
    shop = new WatchedShop(directory.resolve("quiet"), AlertWatch.Times.USUAL.quiet());
    shop.store.alerts().add(Some.raised(AlertKey.service(AlertKind.DISK_LOW), shop.now));
    shop.outside = new Watched.Outside(() -> null, () -> null, () -> List.of("one"));
    shop.round(5 * MINUTE - SECOND);
    assertEquals(List.of("RAISED DISK_LOW"), shop.events());
    shop.round(SECOND);
    assertTrue(shop.events().contains("RAISED RECORD_ALTERED"), shop.events()::toString);
    assertEquals(2, shop.store.alerts().open().size());
    shop.round(10 * MINUTE);
    assertTrue(shop.events().contains("RETURNED DISK_LOW"), shop.events()::toString);
  }

  /** As on a computer whose own clock is an hour ahead until a time service sets it. */
  @Test
  void aClockThatIsSetBackDoesNotMakeTheQuietAfterAStartLonger() {
    shop.close();
    shop = new WatchedShop(directory.resolve("set-back"), AlertWatch.Times.USUAL.quiet());
    shop.outside = new Watched.Outside(() -> null, () -> null, () -> List.of("one"));
    shop.round(MINUTE);
    shop.round(-60 * MINUTE);
    shop.round(4 * MINUTE);
    assertEquals(List.of(), shop.events());
    shop.round(MINUTE);
    assertEquals(List.of("RAISED RECORD_ALTERED"), shop.events());
    shop.outside = new Watched.Outside(() -> null, () -> null, List::of);
    shop.round(-60 * MINUTE);
    shop.round(20 * MINUTE);
    assertTrue(shop.events().contains("RETURNED RECORD_ALTERED"), shop.events()::toString);
  }

  /** The chain of hashes is followed an hour after a start: until then nothing is known of it. */
  @Test
  void anAlteredRecordStaysToldUntilTheChainIsFollowedAgain() {
    shop.store.alerts().add(Some.raised(AlertKey.service(AlertKind.RECORD_ALTERED), shop.now));
    shop.outside = Watched.Outside.UNKNOWN;
    shop.round(30 * MINUTE);
    shop.round(30 * MINUTE);
    assertEquals(List.of("RAISED RECORD_ALTERED"), shop.events());
    shop.outside = new Watched.Outside(() -> null, () -> null, List::of);
    shop.round(SECOND);
    shop.round(30 * MINUTE);
    assertEquals(List.of("RAISED RECORD_ALTERED", "RETURNED RECORD_ALTERED"), shop.events());
  }

  @Test
  void theThreadLooksByItselfAndTellsItsCounts() throws Exception {
    shop.close();
    shop = new WatchedShop(directory.resolve("thread"), Duration.ZERO);
    shop.outside = new Watched.Outside(() -> 2L, () -> null, List::of);
    AlertWatch.Times often = new AlertWatch.Times(Duration.ofMillis(20), Duration.ZERO);
    Watched watched = new Watched(shop.store, () -> List.of(), shop.monitor, shop.outside);
    try (AlertWatch watch = new AlertWatch(watched, () -> shop.now, often)) {
      watch.start();
      Await.until(() -> watch.counts().waiting() == 1);
      assertEquals(1, watch.counts().raised());
      assertEquals(1, watch.counts().open().get(AlertState.UNACKNOWLEDGED));
      assertTrue(watch.counts().watching());
    }
  }
}
