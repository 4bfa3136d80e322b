package org.chordlog.station;

import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Zero;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * What an operator does at a station. Each call waits for the station's thread (two seconds at
 * most), writes to the store on the caller's own thread, and throws {@link BadInput} when refused.
 */
public final class StationActions {
  private static final long PATIENCE_SECONDS = 2;

  private final Station station;
  private final Mailbox mailbox;
  private final Surroundings around;

  StationActions(Station station, Mailbox mailbox, Surroundings around) {
    this.station = station;
    this.mailbox = mailbox;
    this.around = around;
  }

  private String name() {
    return station.settings().name();
  }

  private Store store() {
    return around.store();
  }

  /** Takes a reading now. */
  public void trigger() {
    onStation(station::trigger);
  }

  /** Reads anew what is worked on, after a job, bridge, zero or calibration was changed. */
  public void refresh() {
    onStation(station::refresh);
  }

  /** Takes the zero from the last second; refused while the plunger moves or hangs in free air. */
  public Zero takeZero(String by) {
    Bridge bridge = mounted();
    ZeroEvaluation zero = ask(station::evaluateZero);
    Zero kept =
        store()
            .gauges()
            .add(
                new Zero(
                    0,
                    name(),
                    bridge.id(),
                    zero.valueNm(),
                    zero.scatterNm(),
                    zero.sampleCount(),
                    around.clock().wallMicros(),
                    by));
    around.announcer().announce(new Announcement.Zeroed(name(), kept));
    refresh();
    return kept;
  }

  private Bridge mounted() {
    return store()
        .gauges()
        .mountedOn(name())
        .orElseThrow(() -> new BadInput("bridge", "none", "is on the station", "mount one first"));
  }

  /** Puts another bridge on the station; its zero is stale until it is taken again. */
  public void changeBridge(long bridgeId, String by) {
    Bridge bridge =
        store()
            .gauges()
            .bridge(bridgeId)
            .orElseThrow(() -> new BadInput("bridgeId", bridgeId, "is not known", "a bridge's id"));
    store().gauges().mount(name(), bridge.id(), around.clock().wallMicros(), by);
    refresh();
  }

  /** Selects the job that this station's readings go to. */
  public Job selectJob(long jobId) {
    Job job =
        store()
            .jobs()
            .find(jobId)
            .orElseThrow(() -> new BadInput("jobId", jobId, "is not known", "a job's id"));
    if (!job.station().equals(name())) {
      throw new BadInput("jobId", jobId, "is a job of " + job.station(), "a job of " + name());
    }
    store().jobs().activate(name(), jobId);
    refresh();
    return job;
  }

  private Job job() {
    return store()
        .jobs()
        .activeOn(name())
        .orElseThrow(() -> new BadInput("job", "none", "is selected", "select a job first"));
  }

  /** Goes on with the next piece, whatever positions are left on this one. */
  public Place nextPiece() {
    Job job = job();
    onStation(() -> station.goTo(station.desk().place().nextPiece(job.plan())));
    return station.desk().place();
  }

  /** Goes to a piece and position, to measure it again or to leave some out. */
  public Place goTo(int piece, String position) {
    Check.within("piece", piece, 1, Integer.MAX_VALUE);
    List<String> positions = job().plan().positions();
    if (!positions.contains(position)) {
      throw new BadInput(
          "position", position, "is not in the job's plan", String.join(", ", positions));
    }
    onStation(() -> station.goTo(new Place(piece, position)));
    return station.desk().place();
  }

  /** Takes the last reading of the job out of the statistics, and goes back to its place. */
  public Exclusion undoLast(String reason, String by) {
    Job job = job();
    Reading last = lastCounted(job);
    Exclusion kept = exclude(last, true, reason, by);
    onStation(() -> station.goTo(Place.of(last).on(job.plan())));
    return kept;
  }

  private Reading lastCounted(Job job) {
    ExcludedIds excluded = ExcludedIds.of(store().readings().exclusionsOfJob(job.id()));
    return store().readings().latestOfJob(job.id(), Long.MAX_VALUE, 100).stream()
        .filter(reading -> !excluded.contains(reading.id()))
        .findFirst()
        .orElseThrow(() -> new BadInput("reading", "none", "is left to undo", "take one first"));
  }

  /** Takes any reading out of the statistics, or puts it back. */
  public Exclusion exclude(long readingId, boolean excluded, String reason, String by) {
    Reading reading =
        store()
            .readings()
            .find(readingId)
            .orElseThrow(
                () -> new BadInput("readingId", readingId, "is not known", "a reading's id"));
    return exclude(reading, excluded, reason, by);
  }

  private Exclusion exclude(Reading reading, boolean excluded, String reason, String by) {
    long now = around.clock().wallMicros();
    Exclusion kept =
        store()
            .readings()
            .add(new Exclusion(0, reading.id(), excluded, Check.text("reason", reason), now, by));
    around.announcer().announce(new Announcement.Excluded(name(), reading.jobId(), kept));
    return kept;
  }

  /** Records what happened in the active job, after its last reading. */
  public JobEvent record(
      JobEvent.Kind kind,
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note,
      String by) {
    Job job = job();
    List<Reading> last = store().readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
    JobEvent kept =
        store()
            .jobs()
            .add(
                new JobEvent(
                    0,
                    job.id(),
                    job.machine(),
                    kind,
                    last.isEmpty() ? 0 : last.get(0).id(),
                    around.clock().wallMicros(),
                    settingBefore,
                    settingAfter,
                    materialLot,
                    note,
                    by));
    around.announcer().announce(new Announcement.Happened(name(), kept));
    return kept;
  }

  private void onStation(Runnable work) {
    ask(
        () -> {
          work.run();
          return true;
        });
  }

  private <T> T ask(Supplier<T> work) {
    try {
      return mailbox.ask(work).orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof BadInput refused) {
        throw refused;
      }
      throw new BadInput("station", name(), "does not answer", "try again shortly");
    }
  }
}
