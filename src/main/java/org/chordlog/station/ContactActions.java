package org.chordlog.station;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/** What an operator does with the rests of one contact, as {@link StationActions} says. */
final class ContactActions {
  private static final long PATIENCE_SECONDS = 2;
  private final Station station;
  private final StationRequest asking;
  private final ActiveJob job;
  private final Exclusions exclusions;

  ContactActions(Station station, StationRequest asking, ActiveJob job, Exclusions exclusions) {
    this.station = station;
    this.asking = asking;
    this.job = job;
    this.exclusions = exclusions;
  }

  TriggerAnswer trigger() {
    double seconds = station.settings().captureSettings().patience().timeoutSeconds();
    return asking.await(asking.ask(station::trigger), Math.round(seconds) + 2 * PATIENCE_SECONDS);
  }

  TriggerAnswer confirm(String by) {
    @Nullable CompletableFuture<Reading> first =
        asking.ask(() -> Optional.ofNullable(station.replaced())).orElse(null);
    if (first != null) {
      committed(first)
          .ifPresent(
              reading -> excludeAndGoBack(reading, "a later rest of the same contact counts", by));
    }
    return asking.await(asking.ask(station::confirm), PATIENCE_SECONDS);
  }

  TriggerAnswer another(@Nullable Long jobId) {
    boolean ofAnotherJob = asking.ask(station::asked) == OpenQuestion.Kind.FAR_FROM_TARGET;
    if (ofAnotherJob) {
      Job unused = job.select(otherThanTheActive(jobId));
      asking.news(station::refresh);
    } else if (jobId != null) {
      throw new BadInput(
          "jobId", jobId, "is for a depth far from the target", "none: it counts in this job");
    }
    return asking.await(asking.ask(station::another), PATIENCE_SECONDS);
  }

  private long otherThanTheActive(@Nullable Long jobId) {
    if (jobId == null) {
      throw new BadInput("jobId", "", "is missing", "the job that it is a piece of");
    }
    if (job.find().filter(active -> active.id() == jobId).isPresent()) {
      throw new BadInput("jobId", jobId, "is the job it is far from", "another job, or confirm");
    }
    return jobId;
  }

  void decline() {
    asking.tell(station::decline);
  }

  /** The plunger at rest on something that is no piece: what it gave as a reading is excluded. */
  AtRest atRest(String on, String by) {
    AtRest rest = asking.ask(station::atRest);
    CompletableFuture<Reading> given = rest.contactReading();
    if (given != null) {
      committed(given).ifPresent(reading -> excludeAndGoBack(reading, on, by));
    }
    return rest;
  }

  /** Empty when the store gave it up, or does not keep it in time. */
  private static Optional<Reading> committed(CompletableFuture<Reading> reading) {
    try {
      return Optional.of(reading.copy().orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join());
    } catch (CompletionException e) {
      return Optional.empty();
    }
  }

  private void excludeAndGoBack(Reading reading, String reason, String by) {
    var unused = exclusions.undo(reading, reason, by);
    asking.news(() -> station.returnTo(reading));
  }
}
