package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import org.chordlog.Await;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Incident;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wall times of monotonic ones on a machine that stalls, and a wall clock that is set. */
final class WatchedClockTest {
  private static final long T0 = 1_795_000_000_000_000L;

  /** Both clocks go on together, from where they are set. */
  private static final class TwoClocks implements StationClock {
    private long nanos = 1_000_000_000L;
    private long wall = T0;

    void goOn(Duration by) {
      nanos += by.toNanos();
      wall += by.toNanos() / 1_000;
    }

    @Override
    public long wallMicros() {
      return wall;
    }

    @Override
    public long monotonicNanos() {
      return nanos;
    }
  }

  @TempDir Path directory;
  private final TwoClocks clocks = new TwoClocks();
  private Store store;
  private WatchedClock watched;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    IncidentLog incidents = new IncidentLog(store.incidents());
    watched = new WatchedClock("A", new StationContext(store, clocks, new Announcer(), incidents));
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aStallIsNoStepAndTheTimeIsThatOfTheValue() {
    long first = watched.nanos();
    assertEquals(T0, watched.microsAt(first));
    long taken = watched.nanos();
    clocks.goOn(Duration.ofSeconds(3));
    assertEquals(T0, watched.microsAt(taken));
    assertEquals(ClockState.STEADY, watched.stateAt(T0));
    assertEquals(T0 + 3_000_000, watched.microsAt(watched.nanos()));
    assertEquals(ClockState.STEADY, watched.stateAt(T0));
  }

  @Test
  void aClockThatWasSetIsTold() throws Exception {
    assertEquals(T0, watched.microsAt(watched.nanos()));
    clocks.wall -= 7_200_000_000L;
    long taken = watched.nanos();
    clocks.goOn(Duration.ofSeconds(2));
    assertEquals(T0 - 7_200_000_000L, watched.microsAt(taken));
    assertEquals(ClockState.STEPPED, watched.stateAt(T0));
    Await.until(() -> !store.incidents().ofStation("A", Long.MAX_VALUE, 10).isEmpty());
    Incident told = store.incidents().ofStation("A", Long.MAX_VALUE, 10).get(0);
    assertEquals(Incident.Kind.CLOCK_STEPPED, told.kind());
    assertTrue(told.toMicros() - told.fromMicros() == -7_200_000_000L, told::toString);
  }
}
