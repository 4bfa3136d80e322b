package org.chordlog.station;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.chordlog.measure.Incident;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;
import org.jspecify.annotations.Nullable;

/**
 * Remembers while a piece runs through, so that after a kill or a power cut the next start can say
 * that its reading is lost. Written in the background: the stream never waits for the disk.
 */
final class PieceUnderWay {
  private static final int LEVEL = 0;

  private final String station;
  private final StationContext around;
  private boolean noted;

  PieceUnderWay(String station, StationContext around) {
    this.station = station;
    this.around = around;
  }

  void is(boolean running, long nowMicros) {
    if (running != noted) {
      noted = running;
      String state = running ? Long.toString(nowMicros) : "";
      Checkpoints checkpoints = around.store().checkpoints();
      around.incidents().run(() -> checkpoints.put(slot(), state.getBytes(StandardCharsets.UTF_8)));
    }
  }

  /** Tells at the start what the last run left; null if nothing. */
  @Nullable String tellInterrupted(long nowMicros) {
    Optional<String> since =
        around
            .store()
            .checkpoints()
            .find(slot())
            .map(bytes -> new String(bytes, StandardCharsets.UTF_8))
            .filter(text -> !text.isEmpty());
    if (since.isEmpty()) {
      return null;
    }
    String detail =
        "A piece was running through when Chordlog ended: it has no reading. Measure it by hand, or"
            + " let it run through again.";
    long from = Math.min(nowMicros, Long.parseLong(since.get()));
    Incident.Kind kind = Incident.Kind.PIECE_INTERRUPTED;
    around.incidents().add(new Incident(0, station, kind, from, nowMicros, 1, detail));
    noted = true;
    is(false, nowMicros);
    return detail;
  }

  private Slot slot() {
    return new Slot("passing/" + station, LEVEL, 0);
  }
}
