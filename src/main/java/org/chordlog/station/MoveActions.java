package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.store.PieceMove;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;

/** Pieces that were measured under the wrong job go to the one they belong to. Any thread. */
final class MoveActions {
  private static final long PATIENCE_SECONDS = 15;
  private static final int LOOK_BACK = 1_000;

  private final String name;
  private final Station station;
  private final StationRequest asking;
  private final StationContext around;

  MoveActions(Station station, StationRequest asking, StationContext around) {
    this.name = station.settings().name();
    this.station = station;
    this.asking = asking;
    this.around = around;
  }

  private Store store() {
    return around.store();
  }

  PiecesMoved move(PiecesToMove asked, String by) {
    Job from = ActiveJob.open(found("jobId", asked.jobId()));
    Job to = target(from, asked.toJobId());
    long newest = asking.ask(station::settled).orElseThrow(MoveActions::notStoredYet);
    long stored = store().readings().lastSequence(name);
    NewestPieces pieces = NewestPieces.of(store().readings(), asked);
    requirePlanned(pieces, to);
    pieces.requireNewestOnMachine(store(), from, to);
    Recorded recorded = new Recorded(around.clock().wallMicros(), by);
    PieceMove move = new MoveDraft(store(), from, to, pieces, nextPiece(to), recorded).made();
    return done(move, pieces, from, to, newest, stored);
  }

  PiecesOnOffer onOffer(long jobId) {
    long last = store().readings().newestOfJob(jobId).map(Reading::id).orElse(0L);
    return PiecesOnOffer.of(
        last, NewestPieces.choices(store().readings(), jobId, PiecesOnOffer.MOST));
  }

  private PiecesMoved done(
      PieceMove move, NewestPieces pieces, Job from, Job to, long newest, long stored) {
    long exclusion =
        last(store().readings().exclusionsOfJob(from.id()).stream().map(Exclusion::id));
    long event = last(store().jobs().eventsOfMachine(from.machine()).stream().map(JobEvent::id));
    Place first = pieces.place(from.plan());
    Optional<CompletableFuture<List<Reading>>> begun =
        asking.ask(() -> station.move(move, first, newest, stored));
    CompletableFuture<List<Reading>> told =
        begun
            .orElseThrow(MoveActions::measuredMeanwhile)
            .whenCompleteAsync(
                (kept, failure) -> {
                  if (failure == null) {
                    moved(from, first, exclusion, event);
                  } else {
                    asking.news(() -> station.notMoved(move));
                  }
                });
    return new PiecesMoved(to.id(), asking.await(told.copy(), PATIENCE_SECONDS));
  }

  /** Once it is committed, also where that was later than whoever asked waited for it. */
  private void moved(Job from, Place first, long afterExclusion, long afterEvent) {
    new KeptPlace(store(), from.id()).put(first);
    announce(from, afterExclusion, afterEvent);
    asking.news(station::refresh);
  }

  private static long last(Stream<Long> ids) {
    return ids.reduce(0L, Math::max);
  }

  /** What was stored with the readings, which are announced already. */
  private void announce(Job from, long afterExclusion, long afterEvent) {
    store().readings().exclusionsOfJob(from.id(), afterExclusion).stream()
        .map(each -> new Announcement.Excluded(name, from.id(), each))
        .forEach(around.announcer()::announce);
    store().jobs().eventsOfMachine(from.machine(), afterEvent).stream()
        .map(each -> new Announcement.Happened(name, each))
        .forEach(around.announcer()::announce);
  }

  private static Stale measuredMeanwhile() {
    return new Stale(
        "Readings were taken or moved meanwhile. Look again before you move any piece.");
  }

  private static Stale notStoredYet() {
    return new Stale("The newest reading is not stored yet. Try again shortly.");
  }

  private Job found(String field, long id) {
    return store().jobs().find(id).orElseThrow(() -> UnknownId.of(field, id));
  }

  private Job target(Job from, long id) {
    Job to = found("toJobId", id);
    String allowed = "another open job of " + from.machine() + " and station " + from.station();
    if (to.id() == from.id()) {
      throw new BadInput("toJobId", id, "is the job that they are in", allowed);
    }
    if (!to.station().equals(from.station()) || !to.machine().equals(from.machine())) {
      String where = "is a job of " + to.machine() + " and station " + to.station();
      throw new BadInput("toJobId", id, where, allowed);
    }
    return ActiveJob.open(to);
  }

  private static void requirePlanned(NewestPieces pieces, Job to) {
    List<String> planned = to.plan().positions();
    pieces.all().stream()
        .map(each -> each.reading().position())
        .filter(position -> !planned.contains(position))
        .findFirst()
        .ifPresent(
            position -> {
              throw new BadInput(
                  "toJobId",
                  to.id(),
                  "is not measured at " + position + ", but at " + String.join(", ", planned),
                  "a job whose plan has the positions at which the pieces were measured");
            });
  }

  /** Where that job would go on, after the pieces that count. */
  private int nextPiece(Job to) {
    int last =
        store().readings().search(ReadingQuery.newest(to.id(), LOOK_BACK).excluded(false)).stream()
            .mapToInt(Reading::piece)
            .max()
            .orElse(0);
    return Math.max(last + 1, new JobPlace(store()).of(to).piece());
  }
}
