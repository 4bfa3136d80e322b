package org.chordlog.monitor;

import java.util.List;
import java.util.function.Function;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.StatisticsPlan;
import org.chordlog.store.Store;

/**
 * One job's statistics, brought up to what the store holds before each look. A change that lies
 * before readings already taken in winds back to a checkpoint and goes over them again, so that the
 * digits are those of a recomputation.
 */
final class RunningJob {
  private static final int PAGE = 1_000;

  /** Most readings taken in by one look; the rest follows in the background. */
  private static final int READINGS_A_LOOK = 20_000;

  private final Store store;
  private final long jobId;
  private final Function<Job, StatisticsPlan> plans;
  private final Ladder<Running> ladder;
  private final Observations observations;
  private StatisticsPlan plan;
  private Running running;

  RunningJob(Store store, long jobId, Function<Job, StatisticsPlan> plans) {
    this.store = store;
    this.jobId = jobId;
    this.plans = plans;
    this.plan = plan();
    this.ladder =
        new Ladder<>(
            store.checkpoints(),
            "job/" + jobId,
            () -> new Running(new JobStatistics(plan)),
            state -> Running.unpack(plan, state));
    this.observations = new Observations(store.readings());
    this.running = ladder.newest();
  }

  synchronized <T> T read(Function<JobStatistics, T> view) {
    catchUp();
    return view.apply(running.statistics());
  }

  synchronized Standing standing() {
    long behind = catchUp();
    return running.standing(behind);
  }

  /** Takes in what is new; how many readings are still to come. */
  synchronized long catchUp() {
    followPlan();
    takeChanges();
    int left = READINGS_A_LOOK;
    List<Reading> page;
    do {
      page = store.readings().ofJob(jobId, running.lastReadingId(), Math.min(PAGE, left));
      boolean more = page.size() == PAGE;
      page.forEach(reading -> take(reading, more));
      left -= page.size();
    } while (left > 0 && page.size() == PAGE);
    if (left == 0) {
      return store.readings().countOfJob(jobId) - running.count();
    }
    running.happenedUpTo(Long.MAX_VALUE);
    return 0;
  }

  private void take(Reading reading, boolean more) {
    running.happenedUpTo(reading.id() - 1);
    running.take(reading.id(), observations.of(reading));
    ladder.keepIfDue(running, more);
  }

  private void followPlan() {
    StatisticsPlan now = plan();
    if (!now.equals(plan)) {
      plan = now;
      running = ladder.fresh();
    }
  }

  private StatisticsPlan plan() {
    return plans.apply(store.jobs().find(jobId).orElseThrow());
  }

  private void takeChanges() {
    List<JobEvent> events = store.jobs().eventsOfJob(jobId, running.eventId());
    List<Exclusion> exclusions = store.readings().exclusionsOfJob(jobId, running.exclusionId());
    long before = earliest(events, exclusions);
    if (before < running.lastReadingId()) {
      running = ladder.back(before);
      events = store.jobs().eventsOfJob(jobId, running.eventId());
      exclusions = store.readings().exclusionsOfJob(jobId, running.exclusionId());
    }
    running.note(events, exclusions);
  }

  /** The last reading that the changes leave as it was. */
  private static long earliest(List<JobEvent> events, List<Exclusion> exclusions) {
    long exclusion =
        exclusions.stream().mapToLong(each -> each.readingId() - 1).min().orElse(Long.MAX_VALUE);
    return Math.min(PendingEvents.earliest(events), exclusion);
  }

  synchronized void keep() {
    ladder.keepNow(running);
  }
}
