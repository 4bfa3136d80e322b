package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.capture.StreamDoubt;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.store.PieceMove;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of a capture: a reading, a refusal, or a question. Used by the station's thread
 * alone.
 */
final class ReadingIntake {
  private final String station;
  private final StationContext around;
  private final CurrentWork current;
  private final ReadingMaker maker;
  private final ReadingLog readingLog;
  private final Counters counters;
  private final WatchedClock clock;
  private final StreamGuard guard;
  private final Plausibility plausibility = new Plausibility();
  private final PresentContact contact = new PresentContact();
  private final AskedDepth asked = new AskedDepth();
  private final StudyIntake study;
  private long sequence;

  /** The number of the last reading that was to go to another job. */
  private long lastMoved;

  private volatile boolean onMasters;

  /** What the newest reading of the present contact was taken at. */
  private long recordedNm;

  ReadingIntake(
      StationSettings settings,
      StationContext around,
      CurrentWork current,
      Counters counters,
      WatchedClock clock,
      StreamGuard guard,
      StudyIntake study) {
    this.station = settings.name();
    this.around = around;
    this.current = current;
    this.counters = counters;
    this.clock = clock;
    this.guard = guard;
    this.study = study;
    maker = new ReadingMaker(settings.zero());
    readingLog = new ReadingLog(around, counters);
    sequence = around.store().readings().lastSequence(station);
  }

  PresentContact contact() {
    return contact;
  }

  /** While masters are measured nothing captured becomes a reading. */
  void onMasters(boolean so) {
    onMasters = so;
  }

  boolean onMasters() {
    return onMasters;
  }

  /** What the operator is asked; null if nothing. */
  @Nullable OpenQuestion question() {
    return asked.question();
  }

  /** Done when the reading is committed or the refusal is certain. */
  CompletableFuture<TriggerAnswer> outcome(CaptureOutcome outcome, String rawHex) {
    if (outcome instanceof CaptureOutcome.Captured captured) {
      asked.forget();
      return taken(captured.depth(), rawHex, false, null);
    }
    if (outcome instanceof Rejected rejected) {
      return refused(rejected);
    }
    if (outcome instanceof CaptureOutcome.Offered offered) {
      offered(offered, rawHex);
    } else if (outcome instanceof CaptureOutcome.Withdrawn withdrawn) {
      withdrawn(withdrawn);
    }
    return new CompletableFuture<>();
  }

  /** A piece that ran through; nobody is there to be asked about a radius far from the target. */
  CompletableFuture<TriggerAnswer> passed(CapturedDepth depth, Along along, String rawHex) {
    return taken(depth, rawHex, true, along);
  }

  private CompletableFuture<TriggerAnswer> taken(
      CapturedDepth depth, String rawHex, boolean confirmed, @Nullable Along along) {
    long nanos = depth.monotonicNanos();
    @Nullable Rejected forbidden = forbidden(nanos);
    if (forbidden != null) {
      return refused(forbidden);
    }
    current.refresh(nanos);
    WorkSnapshot work = current.work();
    if (study.isRunning()) {
      return studied(study.take(depth, work, guard.zeroMoved(work.zero())));
    }
    Reading.Source source =
        new Reading.Source(station, sequence + 1, clock.stateAt(depth.wallMicros()), rawHex);
    ReadingMaker.Result result =
        maker.make(depth, work, current.place(), source, guard.zeroMoved(work.zero()), along);
    if (result instanceof ReadingMaker.Result.Refused refusal) {
      return refused(refusal.rejection());
    }
    Reading reading = ((ReadingMaker.Result.Made) result).reading();
    @Nullable Sentence question =
        work.job() == null || confirmed
            ? null
            : plausibility.question(work.job(), reading.radius());
    return question == null
        ? made(reading, confirmed && along == null ? work.job() : null, along)
        : asked(reading, rawHex, question);
  }

  /** Why nothing may be captured for the job now, whatever was measured; null if it may. */
  private @Nullable Rejected forbidden(long nanos) {
    if (onMasters) {
      return new Rejected(
          Reason.ON_MASTERS, nanos, "the job is suspended while masters are measured");
    }
    if (contact.onNoPiece()) {
      return new Rejected(Reason.NO_PIECE, nanos, "the bridge stands on a flat or a master");
    }
    StreamDoubt doubt = guard.forbidding();
    return doubt == null ? null : new Rejected(Reason.SETTING_CHANGED, nanos, doubt.sentence());
  }

  /** A refusal is counted and announced as any other. */
  private CompletableFuture<TriggerAnswer> studied(CompletableFuture<TriggerAnswer> answer) {
    return answer.isDone()
            && !answer.isCompletedExceptionally()
            && answer.join() instanceof TriggerAnswer.Refused refused
        ? refused(refused.rejection())
        : answer;
  }

  private CompletableFuture<TriggerAnswer> asked(
      Reading reading, String rawHex, Sentence question) {
    asked.ask(
        reading.captured(), rawHex, new OpenQuestion(OpenQuestion.Kind.FAR_FROM_TARGET, question));
    return refused(
        new Rejected(Reason.FAR_FROM_TARGET, reading.captured().monotonicNanos(), question));
  }

  /** {@code job} where the operator confirmed that the reading is a piece of it. */
  private CompletableFuture<TriggerAnswer> made(
      Reading reading, @Nullable Job job, @Nullable Along along) {
    if (job != null) {
      plausibility.confirm(job, reading.radius());
    }
    sequence++;
    recordedNm = reading.captured().valueNm();
    current.advance(reading);
    CompletableFuture<Reading> kept =
        readingLog.append(reading, along == null ? List.of() : along.profiles());
    contact.gave(kept);
    guard.gave(reading.captured().monotonicNanos(), kept);
    return kept.thenApply(TriggerAnswer.Taken::new);
  }

  /** Number of the newest reading taken; empty while one waits for its commit. */
  OptionalLong settled() {
    return counters.pendingReadings.get() == 0 ? OptionalLong.of(sequence) : OptionalLong.empty();
  }

  /**
   * Readings that go to another job get the next numbers, after {@code stored} too, the highest in
   * the store. Empty, and nothing done, where the newest is not {@code newest} any more.
   */
  Optional<CompletableFuture<List<Reading>>> move(PieceMove asked, long newest, long stored) {
    if (sequence != newest) {
      return Optional.empty();
    }
    sequence = Math.max(sequence, stored);
    PieceMove move = asked.numberedFrom(sequence + 1);
    sequence += move.readings().size();
    lastMoved = sequence;
    CompletableFuture<List<Reading>> kept = readingLog.move(move);
    WhereMoved there = new WhereMoved(move, kept);
    contact.moved(there);
    guard.moved(there);
    return Optional.of(kept);
  }

  /** The store did not take it: their numbers are free again unless one was given since. */
  void notMoved(PieceMove asked) {
    if (sequence == lastMoved) {
      sequence -= asked.readings().size();
    }
  }

  CompletableFuture<TriggerAnswer> refused(Rejected rejection) {
    counters.rejected(rejection.reason());
    around.announcer().announce(new Announcement.Refused(station, rejection));
    return CompletableFuture.completedFuture(new TriggerAnswer.Refused(rejection));
  }

  private void offered(CaptureOutcome.Offered offered, String rawHex) {
    if (contact.reading() == null) {
      return;
    }
    Sentence question =
        Sentence.of(
            "The bridge came to rest again without being lifted, %s from what was recorded: is it"
                + " the same place, put right, or the next one to be measured?",
            Quantity.fixed(Length.mm(offered.depth().valueNm() - recordedNm), 3).withSign());
    asked.ask(offered.depth(), rawHex, new OpenQuestion(OpenQuestion.Kind.LATER_REST, question));
  }

  private void withdrawn(CaptureOutcome.Withdrawn withdrawn) {
    CompletableFuture<Reading> reading = contact.reading();
    asked.forget();
    study.withdrawn(withdrawn.detail());
    if (reading != null) {
      guard.withdraw(reading, withdrawn.detail());
      contact.gaveNothing();
      var unused =
          refused(new Rejected(Reason.MOVED, withdrawn.monotonicNanos(), withdrawn.detail()));
    }
  }

  /** The reading that a later rest is to replace; null where the question is another one. */
  @Nullable CompletableFuture<Reading> replaced() {
    return asked.needed().replaces() ? contact.reading() : null;
  }

  /** The operator says yes to what was asked. */
  CompletableFuture<TriggerAnswer> confirmed() {
    AskedDepth.Pending now = asked.answered();
    return taken(now.depth(), now.rawHex(), true, null);
  }

  /**
   * The operator says that it is another piece: of the job that is selected by now, or the next
   * place of the present one. It is asked about again where it is far from that target too.
   */
  CompletableFuture<TriggerAnswer> another() {
    AskedDepth.Pending now = asked.answered();
    return taken(now.depth(), now.rawHex(), false, null);
  }

  /** The operator says no: what was asked about is not recorded, and is not asked again. */
  void declined() {
    asked.forget();
  }

  /** What the open question is about; {@link BadInput} where none is open. */
  OpenQuestion.Kind asked() {
    return asked.needed().question().kind();
  }

  /** The plunger is in free air again; a question about another depth stays until the next one. */
  void contactEnded() {
    contact.ended();
    study.contactEnded();
    asked.contactEnded();
  }
}
