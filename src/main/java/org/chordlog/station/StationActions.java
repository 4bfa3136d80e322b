package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Zero;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * What an operator does at a station. Each call waits for the station's thread (two seconds at
 * most), writes to the store on the caller's own thread, and throws {@link BadInput} when refused.
 */
public final class StationActions {
  private static final long PATIENCE_SECONDS = 2;

  private final String name;
  private final Station station;
  private final StationRequest asking;
  private final StationContext around;
  private final Exclusions exclusions;
  private final Events events;

  StationActions(Station station, Mailbox mailbox, StationContext around) {
    this.name = station.settings().name();
    this.station = station;
    this.asking = new StationRequest(name, mailbox);
    this.around = around;
    this.exclusions = new Exclusions(name, around);
    this.events = new Events(name, around);
  }

  private Store store() {
    return around.store();
  }

  /** Takes a reading now. */
  public void trigger() {
    asking.tell(station::trigger);
  }

  /** Reads anew what is worked on, after a job, bridge, zero or calibration was changed. */
  public void refresh() {
    asking.tell(station::refresh);
  }

  /**
   * Takes the zero from the last second; refused while the plunger moves or hangs in free air. A
   * reading that the flat gave in the same contact is taken out of the statistics.
   */
  public Zero takeZero(String by) {
    Bridge bridge = mounted();
    AtRest rest = atRest("zeroed on a flat", by);
    Zero zero =
        new Zero(
            0,
            name,
            bridge.id(),
            rest.value().valueNm(),
            rest.value().scatterNm(),
            rest.value().sampleCount(),
            around.clock().wallMicros(),
            by);
    Zero kept = store().gauges().add(zero);
    around.announcer().announce(new Announcement.Zeroed(name, kept));
    activeJob().ifPresent(job -> events.add(job, JobEvent.Kind.ZERO, "", by));
    refresh();
    return kept;
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
    var unused = exclusions.add(reading, true, reason, by);
    asking.tell(() -> station.returnTo(reading));
  }

  /** The bridge on the station; {@link BadInput} when there is none. */
  Bridge mounted() {
    return store()
        .gauges()
        .mountedOn(name)
        .orElseThrow(() -> new BadInput("bridge", "none", "is on the station", "mount one first"));
  }

  /** Puts another bridge on the station; its zero is stale until it is taken again. */
  public void changeBridge(long bridgeId, String by) {
    Bridge bridge =
        store().gauges().bridge(bridgeId).orElseThrow(() -> unknown("bridgeId", bridgeId));
    store().gauges().mount(name, bridge.id(), around.clock().wallMicros(), by);
    activeJob()
        .ifPresent(job -> events.add(job, JobEvent.Kind.NOTE, "Bridge " + bridge.name(), by));
    refresh();
  }

  /** Selects the job that this station's readings go to. */
  public Job selectJob(long jobId) {
    Job job = store().jobs().find(jobId).orElseThrow(() -> unknown("jobId", jobId));
    if (!job.station().equals(name)) {
      throw new BadInput("jobId", jobId, "is a job of " + job.station(), "a job of " + name);
    }
    store().jobs().activate(name, jobId);
    refresh();
    return job;
  }

  private static BadInput unknown(String field, long id) {
    return new BadInput(field, id, "is not known", "an id from the list");
  }

  private Optional<Job> activeJob() {
    return store().jobs().activeOn(name);
  }

  private Job job() {
    return activeJob()
        .orElseThrow(() -> new BadInput("job", "none", "is selected", "select a job first"));
  }

  /** Goes on with the next piece, whatever positions are left on this one. */
  public Place nextPiece() {
    Job job = job();
    Place next = asking.ask(() -> station.goTo(station.place().nextPiece(job.plan())));
    new KeptPlace(store(), job.id()).put(next);
    return next;
  }

  /** Goes to a piece and position, to measure it again or to leave some out. */
  public Place goTo(int piece, String position) {
    Check.within("piece", piece, 1, Integer.MAX_VALUE);
    Job job = job();
    List<String> positions = job.plan().positions();
    if (!positions.contains(position)) {
      throw new BadInput(
          "position", position, "is not in the job's plan", String.join(", ", positions));
    }
    Place chosen = asking.ask(() -> station.goTo(new Place(piece, position)));
    new KeptPlace(store(), job.id()).put(chosen);
    return chosen;
  }

  /** Takes the last reading of the job out of the statistics, and goes back to its place. */
  public Exclusion undoLast(String reason, String by) {
    Reading last = exclusions.lastCounted(job());
    Exclusion kept = exclusions.add(last, true, reason, by);
    new KeptPlace(store(), last.jobId()).forget();
    asking.tell(() -> station.returnTo(last));
    return kept;
  }

  /** Takes any reading out of the statistics, or puts it back. */
  public Exclusion exclude(long readingId, boolean excluded, String reason, String by) {
    Reading reading =
        store().readings().find(readingId).orElseThrow(() -> unknown("readingId", readingId));
    return exclusions.add(reading, excluded, reason, by);
  }

  /** Records what happened in the active job, after its last reading. */
  public JobEvent record(
      JobEvent.Kind kind,
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note,
      String by) {
    return record(job(), kind, settingBefore, settingAfter, materialLot, note, by);
  }

  /** The same for a job of this station that need not be the active one. */
  public JobEvent record(
      Job job,
      JobEvent.Kind kind,
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note,
      String by) {
    return events.add(job, kind, settingBefore, settingAfter, materialLot, note, by);
  }
}
