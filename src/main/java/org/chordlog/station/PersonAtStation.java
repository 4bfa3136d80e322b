package org.chordlog.station;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;

/** Who measures at a station, remembered over a restart; empty until somebody says so. */
record PersonAtStation(Checkpoints checkpoints, String station) {
  private static final int LEVEL = 0;

  void put(String name) {
    checkpoints.put(slot(), name.getBytes(StandardCharsets.UTF_8));
  }

  Optional<String> find() {
    return checkpoints
        .find(slot())
        .map(bytes -> new String(bytes, StandardCharsets.UTF_8))
        .filter(name -> !name.isBlank());
  }

  private Slot slot() {
    return new Slot("person/" + station, LEVEL, 0);
  }
}
