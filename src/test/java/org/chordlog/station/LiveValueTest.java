package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.capture.Capture.Phase;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Length;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Sample;
import org.chordlog.measure.Zero;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often a value is told: fifty come a second, of an indicator with steps of 1 µm. */
final class LiveValueTest {
  private static final long PERIOD_MILLIS = 20;

  @TempDir Path directory;
  private final List<Announcement.Live> told = new ArrayList<>();
  private final Announcer announcer = new Announcer();
  private long millis = 1_000_000;

  @BeforeEach
  void listen() {
    announcer.subscribe(each -> told.add((Announcement.Live) each));
  }

  private LiveValue live(Store store) {
    return new LiveValue(settings(), new CurrentWork(settings(), store), announcer);
  }

  private static StationSettings settings() {
    return StationRig.settings(
        "A", SerialSettings.of("nowhere"), StationRig.settled(), ZeroRule.DEFAULT);
  }

  /** Its last digit changes from value to value. */
  private void send(LiveValue live, int values, double mm, Phase phase) {
    for (int i = 0; i < values; i++) {
      long valueNm = Length.nm(mm + 0.002 * (i % 2));
      live.offer(new Sample(i, millis * 1_000_000, millis * 1_000, valueNm, 0, false), phase);
      millis += PERIOD_MILLIS;
    }
  }

  /** In two seconds. */
  @ParameterizedTest
  @CsvSource({"FREE, 4", "TAKEN, 4", "MOVING, 20", "RESTING, 20"})
  void whatStandsBetweenPiecesIsToldTwiceASecondAndAllElseTenTimes(Phase phase, int times) {
    try (Store store = Stores.open(directory)) {
      send(live(store), 100, 2.7, phase);
      assertEquals(times, told.size());
    }
  }

  /** A plunger that is pushed, or a phase that begins, waits for no half second. */
  @Test
  void whatMovesOrBeginsIsToldAtOnce() {
    try (Store store = Stores.open(directory)) {
      LiveValue live = live(store);
      send(live, 6, -6, Phase.FREE);
      send(live, 1, -5.99, Phase.FREE);
      assertEquals(List.of(-6.0, -5.99), told.stream().map(LiveValueTest::mm).toList());
      send(live, 6, -5.99, Phase.FREE);
      send(live, 1, -5.99, Phase.MOVING);
      assertEquals(3, told.size());
    }
  }

  @Test
  void aNewZeroIsSeenAtOnce() {
    try (Store store = Stores.open(directory)) {
      CurrentWork current = new CurrentWork(settings(), store);
      LiveValue live = new LiveValue(settings(), current, announcer);
      send(live, 6, -6, Phase.FREE);
      long bridge = store.gauges().add(StationRig.BRIDGE, "tester").id();
      Recorded now = new Recorded(millis * 1_000, "tester");
      store.gauges().add(new Zero(0, "A", bridge, 100_000, 500, 20, now));
      current.refresh(millis * 1_000_000);
      send(live, 1, -6, Phase.FREE);
      assertEquals(2, told.size());
      assertEquals(Length.nm(-6.1), told.get(1).depthNm());
    }
  }

  private static double mm(Announcement.Live live) {
    return Length.mm(live.valueNm());
  }
}
