package org.chordlog.monitor;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Job;
import org.chordlog.station.Announcement;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.PieceGap;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;

/**
 * The running statistics of jobs and machines. The store is the only source: an announcement merely
 * says that there is something new, and every read includes all that was committed before it. A
 * bounded number of jobs and machines is held in memory; the others come back from their
 * checkpoints. Any thread may call; one background thread catches up.
 */
public final class Monitor implements AutoCloseable {
  static final int JOBS_HELD = 64;
  static final int MACHINES_HELD = 64;
  private static final int SLICES_HELD = 8;
  private static final int PARTS_HELD = 4;

  /** Most readings of a job that is read in its parts. */
  public static final int MOST_IN_PARTS = JobParts.MOST;

  private final Store store;
  private final RecentlyUsed<Long, RunningJob> jobs =
      new RecentlyUsed<>(JOBS_HELD, RunningJob::keep);
  private final RecentlyUsed<Long, RunningAlong> alongs =
      new RecentlyUsed<>(JOBS_HELD, RunningAlong::keep);
  private final RecentlyUsed<SliceKey, SlicedJob> slices =
      new RecentlyUsed<>(SLICES_HELD, slice -> {});
  private final RecentlyUsed<PartsKey, JobParts> parts = new RecentlyUsed<>(PARTS_HELD, part -> {});
  private final RecentlyUsed<String, RunningMachine> machines =
      new RecentlyUsed<>(MACHINES_HELD, RunningMachine::keep);
  private final RecentlyUsed<String, RunningAdvice> advised =
      new RecentlyUsed<>(MACHINES_HELD, RunningAdvice::keep);
  private final JobNews news = new JobNews(this::note);
  private final Set<Long> noted = ConcurrentHashMap.newKeySet();
  private final Background background = new Background();

  public Monitor(Store store) {
    this.store = store;
  }

  static StatisticsPlan plan(Job job) {
    return StatisticsPlan.ofRadius(job.specification(), job.plan());
  }

  /** To be subscribed to the stations; returns at once. */
  public void accept(Announcement announcement) {
    announcement.tell(news);
  }

  private void note(long jobId) {
    if (noted.add(jobId)) {
      background.run("job " + jobId, () -> catchUp(jobId));
    }
  }

  private void catchUp(long jobId) {
    noted.remove(jobId);
    if (find(jobId).catchUp() > 0) {
      note(jobId);
    } else {
      bringUpAlong(jobId);
      bringUp(required(jobId).machine());
    }
  }

  /** Of a job whose pieces run through a gauge in a line; one page at a time, as below. */
  private void bringUpAlong(long jobId) {
    boolean inLine =
        store.readings().newestOfJob(jobId).stream()
            .anyMatch(newest -> newest.captured().mode() == CaptureMode.PASSING);
    if (inLine && along(jobId).catchUp() > 0) {
      background.run("along " + jobId, () -> bringUpAlong(jobId));
    }
  }

  /** One page of readings; the rest comes after whatever else waits for this thread. */
  private void bringUp(String machine) {
    if (find(machine).catchUp() + advised(machine).catchUp() > 0) {
      background.run("machine " + machine, () -> bringUp(machine));
    }
  }

  /**
   * Brings the newest jobs that are open, and the machines of the newest jobs, up to date in the
   * background, so that no one waits for it after a start; returns at once.
   */
  public void warm() {
    newest(Job.State.OPEN).forEach(job -> find(job.id()).leaveToBackground());
    newest(Job.State.OPEN).forEach(job -> note(job.id()));
    Stream.of(Job.State.values())
        .flatMap(state -> newest(state).stream().map(Job::machine))
        .distinct()
        .forEach(
            machine -> {
              find(machine).leaveToBackground();
              background.run("machine " + machine, () -> bringUp(machine));
            });
  }

  private List<Job> newest(Job.State state) {
    return store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, JOBS_HELD).in(state));
  }

  /**
   * Reads the statistics of a job; {@code view} must not keep them, since they change after it
   * returns. Throws {@link BadInput} for an unknown job.
   */
  public <T> T read(long jobId, Function<JobStatistics, T> view) {
    return find(jobId).read(view);
  }

  /**
   * Reads how even the pieces of a job are along their length, as {@link #read} does its radius;
   * nothing is in it where none ran through a gauge in a line.
   */
  public <T> T readAlong(long jobId, Function<AlongStatistics, T> view) {
    return along(jobId).read(view);
  }

  private RunningAlong along(long jobId) {
    return alongs.get(jobId, id -> new RunningAlong(store, required(id).id()));
  }

  /** A slice of a job at one state of its statistics. */
  private record SliceKey(long jobId, Slice slice, Standing standing) {}

  /**
   * Reads the statistics of a part of a job, as {@link #read} does those of the whole; the {@value
   * #SLICES_HELD} used last are held. Throws {@link BadInput} when it contains too many readings.
   */
  public <T> T read(long jobId, Slice slice, Function<JobStatistics, T> view) {
    if (slice.whole()) {
      return read(jobId, view);
    }
    SlicedJob held =
        slices.get(
            new SliceKey(jobId, slice, standing(jobId)), any -> new SlicedJob(store, jobId, slice));
    return held.read(plan(required(jobId)), view);
  }

  /** The parts of a job at one state of its statistics. */
  private record PartsKey(long jobId, Standing standing) {}

  /** Its figures lot by lot. Throws {@link BadInput} for a job of too many readings or lots. */
  public List<LotSummary> lots(long jobId, String characteristic) {
    return parts(jobId).lots(characteristic);
  }

  /** How often its pieces were rolled, and what each pass did; throws as {@link #lots} does. */
  public PassSummary passes(long jobId) {
    return parts(jobId).passes();
  }

  /**
   * Its pieces that lack a planned position, without the newest of an open job; throws as {@link
   * #lots} does.
   */
  public List<PieceGap> gaps(Job job) {
    return parts(job.id()).gaps(job.state() == Job.State.OPEN);
  }

  /** How many of its readings are excluded; throws as {@link #lots} does. */
  public long excluded(long jobId) {
    return parts(jobId).excluded();
  }

  private JobParts parts(long jobId) {
    PartsKey key = new PartsKey(jobId, standing(jobId));
    return parts.getMadeOutside(key, any -> JobParts.of(store, required(jobId)));
  }

  /** Reads the statistics of a machine over its jobs, in the same way. */
  public <T> T readMachine(String machine, Function<MachineStatistics, T> view) {
    return find(machine).read(view);
  }

  /** The same, with the number of stored readings that are not in them yet. */
  public <T> T readMachine(String machine, BiFunction<MachineStatistics, Long, T> view) {
    return find(machine).look((running, behind) -> view.apply(running.statistics(), behind));
  }

  /**
   * Whether and how to correct the rollers of a machine. {@code gaugeDoubt}: why its gauge can't be
   * relied on now, empty if it can; then nothing is advised.
   */
  public CorrectionSnapshot advice(String machine, String gaugeDoubt) {
    return advised(machine).read(running -> running.snapshot(gaugeDoubt));
  }

  /** The same while that job is on it, also before its first reading. */
  public CorrectionSnapshot advice(Job job, String gaugeDoubt) {
    return advised(job.machine()).read(running -> RunningAdvice.snapshot(running, job, gaugeDoubt));
  }

  private RunningMachine find(String machine) {
    return machines.get(machine, name -> new RunningMachine(store, name));
  }

  private RunningAdvice advised(String machine) {
    return advised.get(machine, name -> new RunningAdvice(store, name));
  }

  /**
   * The newest jobs of a machine pooled on one chart, of each its newest {@value
   * PooledJobs#READINGS_OF_A_JOB} readings; computed at each call.
   */
  public ShortRun pooled(String machine, int jobs, ShortRun.Basis basis) {
    return PooledJobs.of(store, machine, jobs, basis);
  }

  /** What the statistics of a job include so far. */
  public Standing standing(long jobId) {
    return find(jobId).standing();
  }

  private RunningJob find(long jobId) {
    return jobs.get(jobId, id -> new RunningJob(store, required(id).id()));
  }

  int held() {
    return jobs.size();
  }

  private Job required(long jobId) {
    return store
        .jobs()
        .find(jobId)
        .orElseThrow(() -> new BadInput("job", jobId, "does not exist", "the number of a job"));
  }

  /** Stores a checkpoint of every job and machine held, so that the next start is quick. */
  @Override
  public void close() {
    background.close();
    jobs.releaseAll();
    alongs.releaseAll();
    machines.releaseAll();
    advised.releaseAll();
  }
}
