package org.chordlog.station;

import java.util.List;
import java.util.function.BiFunction;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Stale;

/**
 * Where the next reading belongs, as an operator moves it. Any thread may call; the place itself is
 * changed by the station's thread.
 */
final class PlaceActions {
  private final Station station;
  private final StationRequest asking;
  private final ActiveJob job;
  private final Exclusions exclusions;

  PlaceActions(Station station, StationRequest asking, ActiveJob job, Exclusions exclusions) {
    this.station = station;
    this.asking = asking;
    this.job = job;
    this.exclusions = exclusions;
  }

  Place nextPiece() {
    return move((place, plan) -> place.nextPiece(plan));
  }

  Place rolledAgain(int piece, String by) {
    List<Reading> before = exclusions.counted(job.open(), piece);
    if (before.isEmpty()) {
      throw new BadInput("piece", piece, "has no reading yet", "a piece that was measured");
    }
    Place unused = asking.ask(station::place); // nothing is excluded at a station that hangs
    int pass = before.stream().mapToInt(each -> each.circumstances().pass()).max().orElse(1);
    before.forEach(each -> exclusions.add(each, true, Exclusion.rolledAgainAfter(pass), by));
    return move((place, plan) -> new Place(piece, plan.positions().get(0), pass + 1));
  }

  Place nextPieceAfterReading() {
    int piece = station.place().piece();
    if (piece > 0 && exclusions.counted(job.open(), piece).isEmpty()) {
      throw new Stale("Piece " + piece + " has no reading yet. Go on without one?");
    }
    return nextPiece();
  }

  Place goTo(int piece, String position) {
    Check.within("piece", piece, 1, Integer.MAX_VALUE);
    List<String> positions = job.open().plan().positions();
    if (!positions.contains(position)) {
      throw new BadInput(
          "position", position, "is not in the job's plan", String.join(", ", positions));
    }
    return move((place, plan) -> new Place(piece, position));
  }

  private Place move(BiFunction<Place, Plan, Place> way) {
    Job active = job.open();
    Place next = asking.ask(() -> station.goTo(way.apply(station.place(), active.plan())));
    new KeptPlace(job.store(), active.id()).put(next);
    return next;
  }
}
