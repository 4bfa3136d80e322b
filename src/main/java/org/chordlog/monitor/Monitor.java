package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.station.Announcement;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running statistics of jobs and machines. The store is the only source: an announcement merely
 * says that there is something new, and every read includes all that was committed before it. A
 * bounded number of jobs and machines is held in memory; the others come back from their
 * checkpoints. Any thread may call; one background thread catches up.
 */
public final class Monitor implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Monitor.class);
  static final int JOBS_HELD = 64;
  static final int MACHINES_HELD = 64;
  private static final int SLICES_HELD = 8;
  private static final int PARTS_HELD = 4;

  /** Most readings of a job that is read in its parts. */
  public static final int MOST_IN_PARTS = JobParts.MOST;
  private static final int CLOSE_SECONDS = 5;

  private final Store store;
  private final Map<Long, RunningJob> jobs = new LinkedHashMap<>(16, 0.75f, true);
  private final Map<SliceKey, SlicedJob> slices = new LinkedHashMap<>(16, 0.75f, true);
  private final Map<PartsKey, JobParts> parts = new LinkedHashMap<>(16, 0.75f, true);
  private final Map<String, RunningMachine> machines = new LinkedHashMap<>(16, 0.75f, true);
  private final Map<String, RunningAdvice> advised = new LinkedHashMap<>(16, 0.75f, true);
  private final JobNews news = new JobNews(this::note);
  private final Set<Long> noted = ConcurrentHashMap.newKeySet();
  private final ExecutorService background =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "monitor");
            thread.setDaemon(true);
            return thread;
          });

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
      inBackground("job " + jobId, () -> catchUp(jobId));
    }
  }

  private void catchUp(long jobId) {
    noted.remove(jobId);
    if (find(jobId).catchUp() > 0) {
      note(jobId);
    } else {
      bringUp(required(jobId).machine());
    }
  }

  /** One page of readings; the rest comes after whatever else waits for this thread. */
  private void bringUp(String machine) {
    if (find(machine).catchUp() + advised(machine).catchUp() > 0) {
      inBackground("machine " + machine, () -> bringUp(machine));
    }
  }

  private void inBackground(String what, Runnable work) {
    if (!background.isShutdown()) {
      background.execute(
          () -> {
            try {
              work.run();
            } catch (RuntimeException e) {
              LOG.atError()
                  .addKeyValue("of", what)
                  .setCause(e)
                  .log("statistics not brought up to date");
            }
          });
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
              inBackground("machine " + machine, () -> bringUp(machine));
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
    SlicedJob held = find(new SliceKey(jobId, slice, standing(jobId)));
    return held.read(plan(required(jobId)), view);
  }

  /** Computed by its first reader, outside this lock. */
  private SlicedJob find(SliceKey key) {
    synchronized (slices) {
      SlicedJob held =
          slices.computeIfAbsent(key, any -> new SlicedJob(store, key.jobId(), key.slice()));
      while (slices.size() > SLICES_HELD) {
        slices.remove(slices.keySet().iterator().next());
      }
      return held;
    }
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

  private JobParts parts(long jobId) {
    PartsKey key = new PartsKey(jobId, standing(jobId));
    synchronized (parts) {
      JobParts held = parts.get(key);
      if (held != null) {
        return held;
      }
    }
    JobParts made = JobParts.of(store, jobId, plan(required(jobId)));
    synchronized (parts) {
      parts.put(key, made);
      var unused = release(parts, PARTS_HELD);
      return made;
    }
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

  private RunningMachine find(String machine) {
    return held(machines, machine, name -> new RunningMachine(store, name));
  }

  private RunningAdvice advised(String machine) {
    return held(advised, machine, name -> new RunningAdvice(store, name));
  }

  /** Found or made; those not used for longest are stored and released. */
  private static <R extends CatchUp<?>> R held(
      Map<String, R> all, String machine, Function<String, R> maker) {
    List<R> released;
    R found;
    synchronized (all) {
      found = all.computeIfAbsent(machine, maker);
      released = release(all, MACHINES_HELD);
    }
    released.forEach(CatchUp::keep);
    return found;
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
    List<RunningJob> released;
    RunningJob found;
    synchronized (jobs) {
      found = jobs.get(jobId);
      if (found == null) {
        var unused = required(jobId);
        found = new RunningJob(store, jobId);
        jobs.put(jobId, found);
      }
      released = release(jobs, JOBS_HELD);
    }
    released.forEach(RunningJob::keep);
    return found;
  }

  int held() {
    synchronized (jobs) {
      return jobs.size();
    }
  }

  /** Removes those not used for longest, beyond that many. */
  private static <T> List<T> release(Map<?, T> held, int most) {
    List<T> released = new ArrayList<>();
    var eldest = held.values().iterator();
    while (held.size() > most) {
      released.add(eldest.next());
      eldest.remove();
    }
    return released;
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
    background.shutdown();
    try {
      background.awaitTermination(CLOSE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    synchronized (jobs) {
      jobs.values().forEach(RunningJob::keep);
      jobs.clear();
    }
    close(machines);
    close(advised);
  }

  private static void close(Map<String, ? extends CatchUp<?>> all) {
    synchronized (all) {
      all.values().forEach(CatchUp::keep);
      all.clear();
    }
  }
}
