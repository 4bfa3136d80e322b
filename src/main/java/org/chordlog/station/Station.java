package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import org.chordlog.capture.Capture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Zero;
import org.chordlog.profile.LivePiece;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.store.PieceMove;
import org.chordlog.store.RequestKey;
import org.jspecify.annotations.Nullable;

/**
 * One station at work: what is asked of it and what it tells. {@link #settings()}, {@link #place()}
 * and {@link #status()} may be called by any thread, everything else by the station's thread alone
 * (others go through its mailbox).
 */
final class Station {
  private final StationParts parts;
  private final ValueEvents values;
  private final LinkEvents link;
  private final StatusNow told;

  /** Of the zero that is known; 0 where there is none. */
  private long zeroId;

  Station(StationSettings settings, StationContext around) {
    parts = new StationParts(settings, around, this::announceState);
    values = new ValueEvents(parts, this::announceState);
    link = new LinkEvents(parts, values, this::announceState);
    told = new StatusNow(parts, values);
    readWork();
    rememberFreeAir();
    parts.study.refresh();
    if (parts.line != null) {
      parts.line.started();
    }
  }

  StationSettings settings() {
    return parts.settings;
  }

  /** The link of the length; null where it has none of its own. */
  @Nullable LengthLink lengthLink() {
    return parts.lengthLink;
  }

  /** Finds the delay between the links of depth and length from the next piece. */
  LengthDelay findDelay() {
    CountsInbox counts = parts.counts;
    if (counts == null) {
      throw new BadInput(
          "station",
          parts.settings.name(),
          "has no length on a link of its own, so that there is no delay to find",
          "feed.length link in its settings");
    }
    counts.delay().find();
    announceState();
    return counts.delay();
  }

  LinkLoop.Events link() {
    return link;
  }

  /** Done when the next rest is a committed reading, or a refusal is certain. */
  CompletableFuture<TriggerAnswer> trigger() {
    CompletableFuture<TriggerAnswer> answer = new CompletableFuture<>();
    RequestKey key = RequestKey.current();
    long nanos = parts.clock.nanos();
    values
        .pipeline()
        .trigger(
            nanos,
            parts.clock.microsAt(nanos),
            outcome -> pass(RequestKey.during(key, () -> values.take(outcome)), answer));
    return answer;
  }

  private static void pass(
      CompletableFuture<TriggerAnswer> from, CompletableFuture<TriggerAnswer> to) {
    var unused =
        from.whenComplete(
            (done, failure) -> {
              if (failure == null) {
                to.complete(done);
              } else {
                to.completeExceptionally(failure);
              }
            });
  }

  /** The reading that the answer to the open question replaces; null if none. */
  @Nullable CompletableFuture<Reading> replaced() {
    return parts.intake.replaced();
  }

  CompletableFuture<TriggerAnswer> confirm() {
    CompletableFuture<TriggerAnswer> answer = parts.intake.confirmed();
    announceState();
    return answer;
  }

  CompletableFuture<TriggerAnswer> another() {
    CompletableFuture<TriggerAnswer> answer = parts.intake.another();
    announceState();
    return answer;
  }

  /** What the open question is about; {@link BadInput} where none is open. */
  OpenQuestion.Kind asked() {
    return parts.intake.asked();
  }

  void decline() {
    parts.intake.declined();
    announceState();
  }

  boolean zeroMoved() {
    return parts.guard.zeroMoved(parts.current.work().zero());
  }

  /** From the newest values; {@link BadInput} while the plunger moves or hangs in free air. */
  AtRest atRest() {
    if (values.pipeline().phase() == Capture.Phase.FREE) {
      throw new BadInput(
          "plunger",
          "",
          "hangs in free air: it was not seen to be pushed in",
          "the bridge set down and standing still; lift it once if it stands already. If that does"
              + " not help, look whether the indicator counts up or down: the station's settings may"
              + " say it the other way");
    }
    long tolerance = ZeroEvaluation.stillnessNm(parts.settings.indicator());
    long[] newest = parts.recent.since(parts.clock.nanos());
    ZeroEvaluation value = ZeroEvaluation.of(newest, tolerance, RecentValues.LEAST_COUNT);
    PresentContact contact = parts.intake.contact();
    boolean onNoPiece = contact.onNoPiece();
    contact.standsOnNoPiece(value.valueNm());
    return new AtRest(value, contact.reading(), values.pipeline().freeAirNm(), onNoPiece);
  }

  /** The piece that runs through now; null if none. Any thread. */
  @Nullable LivePiece runningPiece() {
    return parts.line == null ? null : parts.line.live();
  }

  boolean inFreeAir() {
    return values.pipeline().phase() == Capture.Phase.FREE;
  }

  Place place() {
    return parts.current.place();
  }

  Place goTo(Place place) {
    parts.current.goTo(place);
    announceState();
    return parts.current.place();
  }

  /** Back to where that reading was taken, if its job is still the one worked on. */
  void returnTo(Reading reading) {
    goOnAt(Place.of(reading), reading.jobId());
  }

  /** Number of the newest reading taken; empty while one waits for its commit. */
  OptionalLong settled() {
    return parts.intake.settled();
  }

  /**
   * Readings go to another job, and the station to where it is to go on, {@code first} in the job
   * that they leave; empty, and nothing done, where another reading than {@code newest} is the
   * newest by now.
   */
  Optional<CompletableFuture<List<Reading>>> move(
      PieceMove move, Place first, long newest, long stored) {
    Optional<CompletableFuture<List<Reading>>> kept = parts.intake.move(move, newest, stored);
    if (kept.isPresent()) {
      goOnAt(first, move.readings().get(0).from().jobId());
      goOnAfter(move.there().get(move.readings().size() - 1));
    }
    return kept;
  }

  /** The store did not take it: all is as it was. */
  void notMoved(PieceMove move) {
    parts.intake.notMoved(move);
    parts.current.placeAsStored(parts.clock.nanos());
    announceState();
  }

  private void goOnAt(Place place, long jobId) {
    @Nullable Job job = parts.current.work().job();
    if (job != null && job.id() == jobId) {
      goTo(place.on(job.plan()));
    }
  }

  private void goOnAfter(Reading last) {
    @Nullable Job job = parts.current.work().job();
    if (job != null && job.id() == last.jobId()) {
      goTo(Place.of(last).after(job.plan()));
    }
  }

  /** Time went by in which nothing was read; true. */
  boolean missed() {
    values.gap();
    return true;
  }

  /** While masters are measured the job is suspended: nothing captured becomes a reading. */
  void onMasters(boolean so) {
    parts.intake.onMasters(so);
    announceState();
  }

  void refresh() {
    readWork();
    parts.study.refresh();
    announceState();
  }

  /** The tolerance of the job says how much a rest may scatter. */
  private void readWork() {
    parts.current.refresh(parts.clock.nanos());
    values.pipeline().meanMayErrBy(parts.current.work().meanMayErrNm());
    @Nullable Zero zero = parts.current.work().zero();
    if (zero != null && zero.id() != zeroId) {
      zeroId = zero.id();
      values.pipeline().zeroed(parts.clock.nanos());
    }
  }

  /** Whether the indicator still shows in free air what it showed when the zero was set. */
  private void rememberFreeAir() {
    @Nullable Zero zero = parts.current.work().zero();
    if (zero != null && !parts.guard.zeroMoved(zero)) {
      new ZeroLifts(parts.around.store().checkpoints(), parts.settings.name())
          .freeAirNm(zero, parts.settings)
          .ifPresent(
              nm -> values.pipeline().remember(nm, ZeroLift.airNm(parts.settings.indicator())));
    }
  }

  void announceState() {
    parts.around.announcer().announce(new Announcement.State(parts.settings.name(), status()));
  }

  StationStatus status() {
    return told.status();
  }
}
