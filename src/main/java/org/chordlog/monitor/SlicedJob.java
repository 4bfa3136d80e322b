package org.chordlog.monitor;

import java.util.List;
import java.util.function.Function;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.MaterialLots;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * Statistics of a part of a job, computed from its readings by the first thread that reads them;
 * others wait for it, and only those who ask for the same part.
 */
final class SlicedJob {
  /** Most readings processed for a slice. */
  static final int MOST = 200_000;

  private static final int PAGE = 1_000;

  private final Store store;
  private final long jobId;
  private final Slice slice;
  private final Observations observations;
  private final PendingEvents events = new PendingEvents();
  private @Nullable JobStatistics computed;

  SlicedJob(Store store, long jobId, Slice slice) {
    this.store = store;
    this.jobId = jobId;
    this.slice = slice;
    this.observations = new Observations(store.readings());
  }

  /** Throws {@link BadInput} when more than {@value #MOST} readings would have to be processed. */
  synchronized <T> T read(StatisticsPlan plan, Function<JobStatistics, T> view) {
    JobStatistics known = computed;
    if (known == null) {
      known = new JobStatistics(plan);
      note(known);
      process(known);
      computed = known;
    }
    known.answer(AnsweredSignals.of(store.signalAnswers(), jobId));
    return view.apply(known);
  }

  private void note(JobStatistics statistics) {
    List<JobEvent> inside =
        store.jobs().countingOfJob(jobId).stream()
            .filter(each -> each.afterReadingId() > slice.aboveId())
            .toList();
    events.add(inside);
    for (Exclusion each : store.readings().exclusionsOfJob(jobId)) {
      statistics.exclude(each.readingId(), each.excluded() ? each.reason() : "");
    }
  }

  private void process(JobStatistics statistics) {
    long after = firstId() - 1;
    long last = lastId();
    long left = MOST;
    MaterialLots lots = MaterialLots.of(store.jobs(), job());
    while (after < last) {
      List<Reading> page = store.readings().ofJob(jobId, after, PAGE);
      for (Reading reading : page) {
        if (reading.id() <= last && slice.holds(reading, lots)) {
          take(statistics, reading);
        }
      }
      left -= page.size();
      after = page.size() < PAGE ? last : page.get(page.size() - 1).id();
      refuseTooMany(left, after < last);
    }
  }

  private Job job() {
    return store
        .jobs()
        .find(jobId)
        .orElseThrow(() -> new BadInput("job", jobId, "does not exist", "the number of a job"));
  }

  private void take(JobStatistics statistics, Reading reading) {
    events.tell(reading.id() - 1, event -> happened(statistics, event));
    var seen = observations.of(reading);
    if (seen != null) {
      statistics.add(seen);
    }
  }

  /** What happened before its first reading belongs to the part before. */
  private static void happened(JobStatistics statistics, JobEvent event) {
    if (statistics.count() > 0) {
      statistics.happened(event);
    }
  }

  private static void refuseTooMany(long left, boolean more) {
    if (left <= 0 && more) {
      throw new BadInput("from, to", "", "contain too many readings", "up to " + MOST);
    }
  }

  private long firstId() {
    List<Reading> first = store.readings().search(edge(slice.fromMicros(), null, false));
    return first.isEmpty() ? Long.MAX_VALUE : Math.max(slice.aboveId() + 1, first.get(0).id());
  }

  private long lastId() {
    List<Reading> last = store.readings().search(edge(null, slice.toMicros(), true));
    return last.isEmpty() ? 0 : Math.min(slice.upToId(), last.get(0).id());
  }

  private ReadingQuery edge(@Nullable Long from, @Nullable Long to, boolean newestFirst) {
    ReadingQuery one = newestFirst ? ReadingQuery.newest(jobId, 1) : ReadingQuery.oldest(jobId, 1);
    return one.between(from, to).within(slice.aboveId(), slice.upToId());
  }
}
