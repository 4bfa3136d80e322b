package org.chordlog.station;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.chordlog.measure.Reading;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The place that someone chose for a job, or went back to by undoing its last reading, in force
 * until its next reading, also over a restart. Where it can't be stored, a restart goes on after
 * the last reading.
 */
record KeptPlace(Store store, long jobId) {
  private static final Logger LOG = LoggerFactory.getLogger(KeptPlace.class);
  private static final int LEVEL = 0;

  void put(Place place) {
    byte[] state =
        (place.piece() + "/" + place.pass() + " " + place.position())
            .getBytes(StandardCharsets.UTF_8);
    attempt(() -> checkpoints().put(slot(), state));
  }

  Optional<Place> find() {
    return checkpoints().find(slot()).map(KeptPlace::read);
  }

  /** "PIECE/PASS POSITION", in the first releases "PIECE POSITION". */
  private static Place read(byte[] state) {
    String[] parts = new String(state, StandardCharsets.UTF_8).split(" ", 2);
    String[] numbers = parts[0].split("/", 2);
    int pass = numbers.length < 2 ? 1 : Integer.parseInt(numbers[1]);
    return new Place(Integer.parseInt(numbers[0]), parts[1], pass);
  }

  private Slot slot() {
    long last = store.readings().newestOfJob(jobId).map(Reading::id).orElse(0L);
    return new Slot(owner(), LEVEL, last);
  }

  private String owner() {
    return "place/" + jobId;
  }

  private Checkpoints checkpoints() {
    return store.checkpoints();
  }

  private void attempt(Runnable write) {
    try {
      write.run();
    } catch (StoreException e) {
      LOG.atWarn().addKeyValue("job", jobId).log("the place was not stored: {}", e.getMessage());
    }
  }
}
