package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.store.PieceMove.Moved;
import org.chordlog.store.PieceMove.MovedEvent;
import org.junit.jupiter.api.Test;

/** Readings that go to another job: all of what is said of it in one commit, or none. */
public abstract class PieceMovesContract extends StoreContract {
  protected PieceMovesContract(Opener opener) {
    super(opener);
  }

  @Test
  void whatGoesToAnotherJobIsThereTogetherWithAllThatIsSaidOfIt() {
    Reading first = store.readings().append(Kept.first(store)).join();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    JobEvent event = store.jobs().add(event(first.jobId(), JobEvent.Kind.SET_UP, first.id()));
    Reading there = in(other, first).withSequence(2);
    Exclusion here = new Exclusion(0, first.id(), true, Exclusion.belongsTo("K", 1), Some.T0, "me");
    excluded(first, true, "Rolled again after pass 1");
    PieceMove move =
        new PieceMove(
            List.of(new Moved(first, there, here, "Rolled again after pass 1")),
            List.of(
                new MovedEvent(
                    event(other.id(), JobEvent.Kind.SET_UP, 0),
                    0,
                    new EventWithdrawal(0, event.id(), "Belongs to job K", Some.T0, "me"))),
            List.of(event(other.id(), JobEvent.Kind.NOTE, 0)),
            new Change(0, Some.T0, "me", "pieces of job 1", "piece 1", "piece 1", "moved"));
    List<Reading> kept = store.readings().move(move).join();
    reopen();
    assertEquals(List.of(there.withId(kept.get(0).id())), kept);
    assertEquals(kept, store.readings().ofJob(other.id(), 0, 10));
    assertEquals(1, store.readings().countOfJob(other.id()));
    assertTrue(store.readings().exclusionsOfJob(first.jobId()).get(1).moved());
    assertTrue(store.readings().exclusionsOfJob(other.id()).get(0).rolledAgain());
    assertEquals(Set.of(event.id()), store.jobs().takenBack(first.jobId()));
    List<JobEvent> events = store.jobs().eventsOfJob(other.id());
    assertEquals(kept.get(0).id(), events.get(0).afterReadingId());
    assertEquals(JobEvent.Kind.NOTE, events.get(1).kind());
    assertEquals("moved", store.changes().list(Long.MAX_VALUE, 1).get(0).why());
    assertEquals(List.of(), audit(directory));
  }

  private void excluded(Reading reading, boolean out, String why) {
    var unused = store.readings().add(new Exclusion(0, reading.id(), out, why, Some.T0, "me"));
  }

  private static Reading in(Job job, Reading reading) {
    return new Reading(
        0,
        reading.source(),
        new Reading.Place(job.id(), 1, reading.position()),
        reading.measured(),
        reading.result(),
        reading.circumstances());
  }

  private static JobEvent event(long job, JobEvent.Kind kind, long after) {
    JobEvent.Content content = new JobEvent.Content(null, null, "", "a remark");
    return new JobEvent(0, job, "M", kind, after, content, new Recorded(Some.T0, "me"));
  }

  /** Refused as such: it is no fault of the program, and no other change fails with it. */
  @Test
  void aMoveThatWasDoneAlreadyOrBreaksARuleOfTheRecordIsRefusedAlone() {
    Reading first = store.readings().append(Kept.first(store)).join();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    RequestKey.during(new RequestKey("a-key", "a move"), () -> store.jobs().add(other, "me"));
    RequestKey again = new RequestKey("a-key", "a move");
    PieceMove move = move(first, in(other, first).withSequence(2), first.id());
    assertInstanceOf(
        DoneAlready.class, failure(RequestKey.during(again, () -> store.readings().move(move))));
    PieceMove ofNone = move(first, in(other, first).withSequence(2), 99);
    assertInstanceOf(BadInput.class, failure(store.readings().move(ofNone)));
    assertEquals(0, store.readings().countOfJob(other.id()));
    assertEquals(1, store.readings().move(move).join().size());
    assertEquals(List.of(), audit(directory));
  }

  private static PieceMove move(Reading from, Reading there, long excluded) {
    Exclusion here = new Exclusion(0, excluded, true, Exclusion.belongsTo("K", 1), Some.T0, "me");
    Change change = new Change(0, Some.T0, "me", "pieces of job 1", "", "", "moved");
    return new PieceMove(List.of(new Moved(from, there, here, null)), List.of(), List.of(), change);
  }

  private static Throwable failure(CompletableFuture<List<Reading>> move) {
    return Objects.requireNonNull(assertThrows(CompletionException.class, move::join).getCause());
  }

  /** Else what somebody has just excluded would count there. */
  @Test
  void whatWasExcludedOrIncludedMeanwhileStaysWhereItIs() {
    Reading first = store.readings().append(Kept.first(store)).join();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    PieceMove move = move(first, in(other, first).withSequence(2), first.id());
    excluded(first, true, "bridge not seated");
    assertInstanceOf(Stale.class, failure(store.readings().move(move)));
    assertEquals(0, store.readings().countOfJob(other.id()));
    excluded(first, false, "it was");
    assertEquals(1, store.readings().move(move).join().size());
    assertInstanceOf(Stale.class, failure(store.readings().move(move.numberedFrom(3))));
    assertEquals(List.of(), audit(directory));
  }

  @Test
  void nothingGoesToOrFromAJobThatWasClosedMeanwhile() {
    Reading first = store.readings().append(Kept.first(store)).join();
    Job old = store.jobs().find(first.jobId()).orElseThrow();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    PieceMove move = move(first, in(other, first).withSequence(2), first.id());
    for (Job each : List.of(old, other)) {
      Job closed = store.jobs().update(each.withState(Job.State.CLOSED), "me", "done");
      assertInstanceOf(Stale.class, failure(store.readings().move(move)));
      Job unused = store.jobs().update(closed.withState(Job.State.OPEN), "me", "not yet");
    }
    assertEquals(1, store.readings().move(move).join().size());
    assertEquals(List.of(), audit(directory));
  }

  /** One of them breaks a rule: none of it is there. */
  @Test
  void ofAMoveThatBreaksARuleNothingIsStored() {
    Reading first = store.readings().append(Kept.first(store)).join();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    Exclusion here = new Exclusion(0, first.id(), true, Exclusion.belongsTo("K", 1), Some.T0, "me");
    Moved well = new Moved(first, in(other, first).withSequence(2), here, null);
    Moved twice = new Moved(first, in(other, first).withSequence(1), here, null);
    Change change = new Change(0, Some.T0, "me", "pieces of job 1", "", "", "moved");
    PieceMove move = new PieceMove(List.of(well, twice), List.of(), List.of(), change);
    CompletableFuture<List<Reading>> refused = store.readings().move(move);
    assertInstanceOf(
        BadInput.class, assertThrows(CompletionException.class, refused::join).getCause());
    assertEquals(0, store.readings().countOfJob(other.id()));
    assertEquals(List.of(), store.readings().exclusionsOfJob(first.jobId()));
    Reading next = store.readings().append(in(other, first).withSequence(2)).join();
    assertEquals(List.of(next), store.readings().ofJob(other.id(), 0, 10));
    assertEquals(List.of(), audit(directory));
  }
}
