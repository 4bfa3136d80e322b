package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.AbstractList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SpecificationRevision;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Jobs, the revisions of their limits, and their events. */
public abstract class JobsContract extends StoreContract {
  protected JobsContract(Opener opener) {
    super(opener);
  }

  private static final OrderDetails DETAILS = new OrderDetails("Bogen & Sohn", "C", 2827.4, 90.0);

  @Test
  void aJobComesBackEqualAfterReopening() {
    Job asked = Some.job("J", "M").withDetails(DETAILS);
    Job kept = store.jobs().add(asked, "me");
    assertEquals(asked.stored(kept.id(), 1), kept);
    Job plain = store.jobs().add(Some.job("K", "M"), "me");
    assertTrue(plain.id() > kept.id());
    reopen();
    assertEquals(kept, store.jobs().find(kept.id()).orElseThrow());
    assertEquals(List.of(plain, kept), store.jobs().list(Long.MAX_VALUE, 10));
    assertEquals(List.of(kept), store.jobs().list(plain.id(), 10));
    assertEquals(Optional.empty(), store.jobs().find(99));
  }

  @Test
  void aStationHasOneActiveJobAtATime() {
    Job first = store.jobs().add(Some.job("J", "M"), "me");
    Job second = store.jobs().add(Some.job("K", "M"), "me");
    assertEquals(Optional.empty(), store.jobs().activeOn("A"));
    store.jobs().activate("A", first.id());
    store.jobs().activate("A", second.id());
    reopen();
    assertEquals(second, store.jobs().activeOn("A").orElseThrow());
    assertEquals(Optional.empty(), store.jobs().activeOn("B"));
  }

  @Test
  void changedLimitsAreANewRevisionAndOtherChangesAreNot() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    Job tighter = store.jobs().update(job.withSpecification(limits(1790)), "you", "asked for");
    Job closed = store.jobs().update(tighter.withState(Job.State.CLOSED), "me", "done");
    Job back = store.jobs().update(closed.withSpecification(job.specification()), "me", "no");
    assertEquals(List.of(1, 2, 2, 3), revisions(job, tighter, closed, back));
    assertEquals(back, store.jobs().find(job.id()).orElseThrow());
    List<SpecificationRevision> kept = store.jobs().revisions(job.id());
    List<Change> changes = store.changes().list(Long.MAX_VALUE, 10);
    assertEquals(changes.size(), store.changes().about(changes.get(0).what()).size());
    assertEquals(List.of(), store.changes().about("job 0"));
    assertEquals(
        List.of(
            revision(job, 1, changes.get(3), null, job.specification()),
            revision(job, 2, changes.get(2), job.specification(), limits(1790)),
            revision(job, 3, changes.get(0), limits(1790), job.specification())),
        kept);
    assertEquals(List.of(), store.jobs().revisions(99));
  }

  private static List<Integer> revisions(Job... jobs) {
    return List.of(jobs).stream().map(Job::revision).toList();
  }

  private static SpecificationRevision revision(
      Job job, int revision, Change change, @Nullable Specification from, Specification to) {
    return new SpecificationRevision(
        job.id(), revision, change.atMicros(), change.by(), change.why(), from, to);
  }

  private static Specification limits(double lowerMm) {
    return new Specification(Some.job("J", "M").specification().face(), 1800, lowerMm, 1812.0);
  }

  @Test
  void eachChangeOfAJobIsInTheRecordOfChanges() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    store.jobs().update(job.withSpecification(limits(1790)), "you", "asked for");
    List<Change> changes = store.changes().list(Long.MAX_VALUE, 10);
    assertEquals(
        List.of("job 1 you asked for", "job 1 me new"),
        changes.stream().map(c -> c.what() + " " + c.by() + " " + c.why()).toList());
    assertEquals(changes.get(1).to(), changes.get(0).from());
    assertTrue(changes.get(0).to().contains("1790.0"));
  }

  @Test
  void severalJobsAreStoredAllOrNone() {
    Job job = Some.job("J", "M");
    List<Job> kept = store.jobs().addAll(List.of(job, Some.job("K", "M")), "me");
    assertEquals(List.of("J", "K"), kept.stream().map(Job::name).toList());
    List<Job> breaksOff =
        new AbstractList<>() {
          @Override
          public Job get(int index) {
            if (index == 0) {
              return job;
            }
            throw new IllegalStateException("after the first");
          }

          @Override
          public int size() {
            return 2;
          }
        };
    assertThrows(RuntimeException.class, () -> store.jobs().addAll(breaksOff, "me"));
    assertEquals(2, store.jobs().list(Long.MAX_VALUE, 9).size());
  }

  /** A reader never sees the revision of a job without its entry, however it comes between. */
  @Test
  void aJobAndItsRevisionAreOneCommit() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    CompletableFuture<?> writer =
        CompletableFuture.runAsync(
            () -> {
              for (int i = 1; i <= 200; i++) {
                Specification next = limits(1700 + i / 2.0);
                store.jobs().update(job.withSpecification(next), "me", "step " + i);
              }
            });
    boolean ended;
    do {
      ended = writer.isDone();
      Job seen = store.jobs().find(job.id()).orElseThrow();
      List<SpecificationRevision> revisions = store.jobs().revisions(job.id());
      assertTrue(revisions.size() >= seen.revision());
      assertEquals(seen.specification(), revisions.get(seen.revision() - 1).to());
    } while (!ended);
    writer.join();
    assertEquals(201, store.jobs().revisions(job.id()).size());
  }

  @Test
  void whatNamesAJobThatDoesNotExistIsRefused() {
    Job unknown = Some.job("J", "M").stored(77, 1);
    BadInput e = assertThrows(BadInput.class, () -> store.jobs().update(unknown, "me", "why"));
    assertTrue(e.toString().contains("77 does not exist"), e::toString);
    assertThrows(BadInput.class, () -> store.jobs().activate("A", 77));
    assertThrows(BadInput.class, () -> store.jobs().add(event(77, JobEvent.Kind.NOTE)));
    assertEquals(List.of(), store.changes().list(Long.MAX_VALUE, 10));
  }

  @Test
  void eventsComeBackByJobAndByMachine() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    JobEvent correction =
        new JobEvent(
            0,
            job.id(),
            "M",
            JobEvent.Kind.CORRECTION,
            0,
            new JobEvent.Content(12.5, 12.25, "", "half"),
            new Recorded(5, "me"));
    JobEvent first = store.jobs().add(correction);
    JobEvent lot = store.jobs().add(event(job.id(), JobEvent.Kind.MATERIAL_LOT));
    JobEvent note = store.jobs().add(event(other.id(), JobEvent.Kind.NOTE));
    assertTrue(first.id() < lot.id() && lot.id() < note.id());
    assertEquals(12.25, first.settingAfter());
    reopen();
    assertEquals(List.of(first, lot), store.jobs().eventsOfJob(job.id()));
    assertEquals(List.of(lot), store.jobs().eventsOfJob(job.id(), first.id()));
    assertEquals(List.of(first, lot, note), store.jobs().eventsOfMachine("M"));
    assertEquals(List.of(note), store.jobs().eventsOfMachine("M", lot.id()));
    assertEquals(List.of(), store.jobs().eventsOfMachine("N"));
  }

  private static JobEvent event(long job, JobEvent.Kind kind) {
    return new JobEvent(
        0, job, "M", kind, 0, new JobEvent.Content(null, null, "lot 2", ""), new Recorded(7, "me"));
  }

  @Test
  void anEventThatIsTakenBackStaysVisible() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    JobEvent event = store.jobs().add(event(job.id(), JobEvent.Kind.CORRECTION));
    EventWithdrawal asked = new EventWithdrawal(0, event.id(), "wrong machine", 9, "you");
    EventWithdrawal kept = store.jobs().add(asked);
    reopen();
    assertEquals(List.of(event), store.jobs().eventsOfJob(job.id()));
    assertEquals(List.of(kept), store.jobs().withdrawalsOfJob(job.id(), 0));
    assertEquals(List.of(), store.jobs().withdrawalsOfJob(job.id(), kept.id()));
    assertEquals(List.of(kept), store.jobs().withdrawalsOfMachine("M", 0));
    assertEquals(List.of(), store.jobs().withdrawalsOfMachine("N", 0));
    assertEquals(new EventWithdrawal(kept.id(), event.id(), "wrong machine", 9, "you"), kept);
  }

  @Test
  void anEventTakesThePlaceOfAWrongOneOrNothingHappens() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    JobEvent wrong = store.jobs().add(event(job.id(), JobEvent.Kind.MATERIAL_LOT));
    EventWithdrawal back = new EventWithdrawal(0, wrong.id(), "misread", 9, "me");
    JobEvent right = store.jobs().add(event(job.id(), JobEvent.Kind.MATERIAL_LOT), back);
    assertEquals(List.of(wrong, right), store.jobs().eventsOfJob(job.id()));
    assertEquals(Set.of(wrong.id()), store.jobs().takenBack(job.id()));
    JobEvent again = event(job.id(), JobEvent.Kind.MATERIAL_LOT);
    assertThrows(BadInput.class, () -> store.jobs().add(again, back));
    reopen();
    assertEquals(List.of(wrong, right), store.jobs().eventsOfJob(job.id()), "not both, so none");
  }

  @Test
  void anEventIsTakenBackOnceAndMustExist() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    JobEvent event = store.jobs().add(event(job.id(), JobEvent.Kind.NOTE));
    store.jobs().add(new EventWithdrawal(0, event.id(), "twice", 9, "me"));
    for (long id : new long[] {event.id(), 99}) {
      EventWithdrawal refused = new EventWithdrawal(0, id, "again", 9, "me");
      BadInput e = assertThrows(BadInput.class, () -> store.jobs().add(refused));
      assertEquals("eventId", e.faults().get(0).field());
    }
    assertEquals(1, store.jobs().withdrawalsOfJob(job.id(), 0).size());
  }
}
