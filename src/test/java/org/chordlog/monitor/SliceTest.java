package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.shop.Shop;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A part of a job against the readings that are in it. */
final class SliceTest {
  @TempDir Path directory;

  @Test
  void holdsTheReadingsBetweenItsIdsAndTimesAlone() {
    try (Store store = Stores.open(directory);
        Monitor monitor = new Monitor(store)) {
      Shop.open(store, Shop.END_MICROS, "A").usual();
      Job job = job(store);
      List<Reading> all = store.readings().ofJob(job.id(), 0, 1_000);
      Reading from = all.get(225);
      Reading to = all.get(299);
      Slice byId = new Slice(all.get(224).id(), to.id(), null, null);
      Slice byTime = new Slice(0, Long.MAX_VALUE, from.wallMicros(), to.wallMicros());
      List<Reading> inside = all.subList(225, 300);
      assertEquals(mean(inside), mean(monitor, job, byId), 1e-9);
      assertEquals(mean(monitor, job, byId), mean(monitor, job, byTime));
      assertEquals(75L, monitor.read(job.id(), byId, JobStatistics::count));
      assertEquals(
          1L,
          monitor.read(
              job.id(), new Slice(to.id() - 1, to.id(), null, null), JobStatistics::count));
    }
  }

  @Test
  void anEmptyOneIsEmptyAndABackwardsOneIsRefused() {
    try (Store store = Stores.open(directory);
        Monitor monitor = new Monitor(store)) {
      Shop.open(store, Shop.END_MICROS, "A").usual();
      Slice later = new Slice(0, Long.MAX_VALUE, Shop.END_MICROS + 1, null);
      assertEquals(0L, monitor.read(job(store).id(), later, JobStatistics::count));
    }
    assertThrows(BadInput.class, () -> new Slice(5, 4, null, null));
    assertThrows(BadInput.class, () -> new Slice(0, 9, 2L, 1L));
  }

  private static Job job(Store store) {
    return store.jobs().list(Long.MAX_VALUE, 100).stream()
        .filter(each -> each.name().equals("Canopy hoops"))
        .findFirst()
        .orElseThrow();
  }

  private static double mean(Monitor monitor, Job job, Slice slice) {
    return monitor.read(
        job.id(),
        slice,
        statistics ->
            statistics.summary(StatisticsPlan.WHOLE_PIECE, Scope.JOB).figure("mean").stream()
                .mapToDouble(figure -> figure.value() == null ? Double.NaN : figure.value())
                .sum());
  }

  private static double mean(List<Reading> readings) {
    return readings.stream()
        .mapToDouble(each -> each.radius().radiusMm() == null ? 0 : each.radius().radiusMm())
        .average()
        .orElseThrow();
  }
}
