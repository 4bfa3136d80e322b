package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class KeptPlaceTest {
  @TempDir private Path directory;

  @Test
  void aChosenPlaceStandsUntilTheNextReadingOrUntilItIsTakenBack() {
    Place chosen = new Place(7, "middle of the bend");
    try (Store store = Stores.open(directory)) {
      Job job = store.jobs().add(Some.job("J", "M"), "me");
      KeptPlace kept = new KeptPlace(store, job.id());
      assertEquals(Optional.empty(), kept.find());
      kept.put(chosen);
      assertEquals(Optional.of(chosen), kept.find());
      long setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("b"), "me")));
      store.readings().append(Some.reading("A", 1, job.id(), setUp)).join();
      assertEquals(Optional.empty(), kept.find());
      kept.put(chosen);
      kept.forget();
      assertEquals(Optional.empty(), kept.find());
    }
  }
}
