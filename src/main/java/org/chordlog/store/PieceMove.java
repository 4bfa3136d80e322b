package org.chordlog.store;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Change;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/**
 * Readings that go to the job they belong to: each is written once more there, and the old one is
 * excluded. {@code notes} say so in both jobs, {@code change} in the record of changes.
 */
public record PieceMove(
    List<Moved> readings, List<MovedEvent> events, List<JobEvent> notes, Change change) {
  public PieceMove {
    readings = List.copyOf(readings);
    events = List.copyOf(events);
    notes = List.copyOf(notes);
  }

  /**
   * One reading as it was taken, and as it is written in the other job (its id is ignored); {@code
   * here} excludes the old one, {@code outThere} is why that did not count before, and so the new
   * one does not either, null where they do.
   */
  public record Moved(Reading from, Reading there, Exclusion here, @Nullable String outThere) {}

  /**
   * An event between them: it is written in the other job after the reading of that index, and
   * taken back in the old one.
   */
  public record MovedEvent(JobEvent there, int afterIndex, EventWithdrawal here) {}

  /** The same with running numbers of the station, from that one on. */
  public PieceMove numberedFrom(long sequence) {
    List<Moved> numbered = new ArrayList<>();
    for (Moved each : readings) {
      Reading there = each.there().withSequence(sequence + numbered.size());
      numbered.add(new Moved(each.from(), there, each.here(), each.outThere()));
    }
    return new PieceMove(numbered, events, notes, change);
  }

  /** The readings to be written, in order. */
  public List<Reading> there() {
    return readings.stream().map(Moved::there).toList();
  }
}
