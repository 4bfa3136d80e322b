package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Optional;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class KeptPlaceTest {
  @TempDir private Path directory;

  @Test
  void aChosenPlaceStandsUntilTheNextReading() {
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
    }
  }

  /** Two pieces would have one number, and the one that was excluded could not be told apart. */
  @Test
  void aStartGivesNoNumberTwiceThoughTheLastReadingDoesNotCount() {
    try (Store store = Stores.open(directory)) {
      Job job = store.jobs().add(Some.job("J", "M"), "me");
      long setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("b"), "me")));
      Reading last = store.readings().append(Some.reading("A", 1, job.id(), setUp)).join();
      Place next = new JobPlace(store).of(job);
      assertEquals(Place.of(last).after(job.plan()), next);
      store.readings().add(new Exclusion(0, last.id(), true, "knocked", Some.T0, "me"));
      assertEquals(next, new JobPlace(store).of(job));
    }
  }
}
