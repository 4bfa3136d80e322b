package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.Face;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.RollerScale.Gain;
import org.chordlog.measure.RollerScale.Motion;
import org.chordlog.measure.RollerScale.Tighter;
import org.chordlog.measure.SignalAnswer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The append-only records, and the checkpoints. */
public abstract class RecordsContract extends StoreContract {
  protected RecordsContract(Opener opener) {
    super(opener);
  }

  @Test
  void changesComeNewestFirst() {
    Change first = store.changes().add(new Change(0, 5, "me", "station A", "1", "2", "other"));
    Change second = store.changes().add(new Change(0, 4, "you", "station B", "", "2", ""));
    reopen();
    assertTrue(first.id() < second.id());
    assertEquals(List.of(second, first), store.changes().list(Long.MAX_VALUE, 10));
    assertEquals(List.of(first), store.changes().list(second.id(), 10));
    assertEquals(List.of(second), store.changes().list(Long.MAX_VALUE, 1));
  }

  @Test
  void incidentsOfEveryKindComeNewestFirst() {
    List<Incident> kept = new ArrayList<>();
    for (Incident.Kind kind : Incident.Kind.values()) {
      kept.add(0, store.incidents().add(new Incident(0, "A", kind, 5, 6, 7, "detail")));
    }
    reopen();
    assertEquals(kept, store.incidents().ofStation("A", Long.MAX_VALUE, 100));
    assertEquals(kept.subList(1, 3), store.incidents().ofStation("A", kept.get(0).id(), 2));
    assertEquals(List.of(), store.incidents().ofStation("B", Long.MAX_VALUE, 100));
  }

  @Test
  void aCheckpointReplacesTheOneOfItsOwnerAndLevel() {
    Checkpoints.Slot old = new Checkpoints.Slot("job 1", 0, 1_000);
    Checkpoints.Slot next = new Checkpoints.Slot("job 1", 0, 2_000);
    Checkpoints.Slot above = new Checkpoints.Slot("job 1", 1, 1_000);
    Checkpoints.Slot other = new Checkpoints.Slot("job 2", 0, 3_000);
    for (Checkpoints.Slot slot : List.of(old, next, above, other)) {
      store.checkpoints().put(slot, new byte[] {(byte) slot.level(), 7});
    }
    reopen();
    assertEquals(List.of(next, above), store.checkpoints().of("job 1"));
    assertArrayEquals(new byte[] {1, 7}, store.checkpoints().find(above).orElseThrow());
    assertEquals(Optional.empty(), store.checkpoints().find(old));
    store.checkpoints().removeAbove("job 1", 1_000);
    assertEquals(List.of(above), store.checkpoints().of("job 1"));
    assertEquals(List.of(other), store.checkpoints().of("job 2"));
  }

  /** What a thread writes while it works on a request with a key carries it, and nothing else. */
  @Test
  void whatARequestWritesCarriesItsKey() {
    RequestKey key = new RequestKey("key 1", "request 1");
    Job job = RequestKey.during(key, () -> store.jobs().add(Some.job("K", "M"), "me"));
    RequestKey reading = new RequestKey("key 2", "request 2");
    var kept = RequestKey.during(reading, () -> store.readings().append(Kept.first(store)).join());
    RequestKey refused = new RequestKey("key 3", "request 3");
    assertThrows(
        BadInput.class,
        () -> RequestKey.during(refused, () -> store.signalAnswers().add(answer(1, 99, "x"))));
    Job later = store.jobs().add(Some.job("L", "M"), "me");
    reopen();
    AnsweredRequests answered = store.answeredRequests();
    assertEquals(new AnsweredRequests.Done("request 1", null), answered.find("key 1").get());
    assertEquals(new AnsweredRequests.Done("request 2", null), answered.find("key 2").get());
    assertEquals(Optional.empty(), answered.find("key 3"));
    assertEquals(
        List.of(true, true, false), List.of(key.written(), reading.written(), refused.written()));
    assertTrue(job.id() < later.id() && kept.id() > 0);
  }

  /** As where the first was given up and written later than the second was begun. */
  @Test
  void whatIsWrittenUnderTheKeyOfAnotherRequestIsRefused() {
    RequestKey first = new RequestKey("key 1", "request 1");
    Job unused = RequestKey.during(first, () -> store.jobs().add(Some.job("K", "M"), "me"));
    RequestKey second = new RequestKey("key 1", "request 1");
    assertThrows(
        DoneAlready.class,
        () -> RequestKey.during(second, () -> store.jobs().add(Some.job("L", "M"), "me")));
    Reading reading = Kept.first(store);
    CompletableFuture<Reading> refused =
        RequestKey.during(second, () -> store.readings().append(reading));
    CompletionException e = assertThrows(CompletionException.class, refused::join);
    assertInstanceOf(DoneAlready.class, e.getCause());
    assertFalse(second.written());
    long jobs =
        store.jobs().list(Long.MAX_VALUE, 99).stream().filter(j -> j.name().equals("L")).count();
    assertEquals(0, jobs);
    assertEquals(0, store.readings().lastId());
    assertEquals(1, store.readings().append(reading).join().id());
    var done = store.answeredRequests().findAfterWrites("key 1");
    assertEquals(new AnsweredRequests.Done("request 1", null), done.orElseThrow());
  }

  @Test
  void theAnswerOfARequestIsStoredAfterItAndForgottenWithIt() {
    AnsweredRequests answered = store.answeredRequests();
    AnsweredRequests.Answer given =
        new AnsweredRequests.Answer(201, "application/json", new byte[] {1, 0, -1});
    RequestKey key = new RequestKey("key 1", "request 1");
    Job unused = RequestKey.during(key, () -> store.jobs().add(Some.job("K", "M"), "me"));
    answered.answer("key 1", given);
    answered.answer("key 2", given);
    reopen();
    answered = store.answeredRequests();
    AnsweredRequests.Answer found =
        Objects.requireNonNull(answered.find("key 1").orElseThrow().answer());
    assertEquals(201, found.status());
    assertEquals("application/json", found.mediaType());
    assertArrayEquals(given.body(), found.body());
    assertEquals(Optional.empty(), answered.find("key 2"));
    answered.forget("key 1");
    assertEquals(Optional.empty(), answered.find("key 1"));
  }

  @Test
  void answersToSignalsComeByJob() {
    Reading reading = store.readings().append(Kept.first(store)).join();
    SignalAnswer first = store.signalAnswers().add(answer(reading.jobId(), reading.id(), "worn"));
    SignalAnswer second = store.signalAnswers().add(answer(reading.jobId(), reading.id(), "lot"));
    reopen();
    assertEquals(List.of(first, second), store.signalAnswers().ofJob(reading.jobId(), 0));
    assertEquals(List.of(second), store.signalAnswers().ofJob(reading.jobId(), first.id()));
    assertEquals(List.of(), store.signalAnswers().ofJob(99, 0));
    String machine = store.jobs().find(reading.jobId()).orElseThrow().machine();
    assertEquals(List.of(second), store.signalAnswers().ofMachine(machine, 9), "the newest counts");
    assertEquals(List.of(), store.signalAnswers().ofMachine("another", 9));
    assertEquals(answerWithId(first.id(), reading), first);
  }

  private static SignalAnswer answerWithId(long id, Reading reading) {
    return new SignalAnswer(
        id,
        reading.jobId(),
        new SignalAnswer.PointName("start", "INDIVIDUALS", reading.id()),
        "worn",
        "changed",
        new Recorded(5, "me"));
  }

  private static SignalAnswer answer(long job, long reading, String cause) {
    return new SignalAnswer(
        0,
        job,
        new SignalAnswer.PointName("start", "INDIVIDUALS", reading),
        cause,
        "changed",
        new Recorded(5, "me"));
  }

  @Test
  void anAnswerNamesAReadingOfItsJob() {
    Reading reading = store.readings().append(Kept.first(store)).join();
    Job other = store.jobs().add(Some.job("K", "M"), "me");
    for (SignalAnswer refused :
        List.of(answer(other.id(), reading.id(), "x"), answer(reading.jobId(), 99, "x"))) {
      BadInput e = assertThrows(BadInput.class, () -> store.signalAnswers().add(refused));
      assertEquals("readingId", e.faults().get(0).field());
    }
    assertEquals(List.of(), store.signalAnswers().ofJob(other.id(), 0));
  }

  @Test
  void theNewestRowOfARollerHoldsUntilItIsRemoved() {
    Recorded by = new Recorded(5, "me");
    Roller entry = new Roller("entry", 180, 0.1, Face.OUTER, true);
    Roller inner = new Roller("inner", 150.25, 0, Face.INNER, false);
    Roller ground = new Roller("entry", 179.4, 0.02, Face.OUTER, true);
    store.machines().add("M", entry, by);
    store.machines().add("M", inner, by);
    store.machines().add("N", entry, by);
    store.machines().add("M", ground, by);
    reopen();
    assertEquals(List.of(ground, inner), store.machines().rollers("M"));
    store.machines().removeRoller("M", "entry", by);
    assertEquals(List.of(inner), store.machines().rollers("M"));
    assertEquals(List.of(entry), store.machines().rollers("N"));
    assertThrows(BadInput.class, () -> store.machines().removeRoller("M", "entry", by));
    store.machines().add("M", entry, by);
    assertEquals(List.of(entry, inner), store.machines().rollers("M"));
  }

  @Test
  void theNewestScaleOfAMachineAndNameIsInForce() {
    Motion known = new Motion(Tighter.LOWER, 0.05, 0.2, 0.03);
    Motion unknown = new Motion(Tighter.UNKNOWN, null, null, null);
    RollerScale dial = store.machines().add(scale("M", "dial", unknown, null));
    RollerScale axis = store.machines().add(scale("M", "axis Y", known, new Gain(-2e-6, 1e-6)));
    RollerScale other = store.machines().add(scale("N", "dial", known, null));
    RollerScale finer = store.machines().add(scale("M", "dial", known, null));
    reopen();
    assertEquals(List.of(axis, finer), store.machines().scales("M"));
    assertEquals(List.of(other), store.machines().scales("N"));
    assertEquals(List.of(), store.machines().scales("P"));
    assertEquals(List.of(dial, axis, finer), store.machines().scaleHistory("M"));
    assertEquals(unknown, dial.motion());
    assertEquals(new Gain(-2e-6, 1e-6), axis.gain());
  }

  private static RollerScale scale(
      String machine, String name, Motion motion, @Nullable Gain gain) {
    return new RollerScale(0, machine, name, "mm", motion, gain, new Recorded(5, "me"));
  }
}
