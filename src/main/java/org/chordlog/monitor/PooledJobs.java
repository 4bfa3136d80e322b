package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.ShortRun.Part;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;

/** The newest jobs of a machine on one chart, computed from their newest readings. */
final class PooledJobs {
  /** Most readings of a job; longer ones have a chart of their own. */
  static final int READINGS_OF_A_JOB = 200;

  private final Store store;
  private final ShortRun pooled;
  private final List<Taken> taken = new ArrayList<>();

  private record Taken(Reading reading, Part part) {}

  private PooledJobs(Store store, ShortRun.Basis basis) {
    this.store = store;
    pooled = new ShortRun(basis, "mm", ChartSettings.usual().withRunRules(ShortRun.RULES));
  }

  static ShortRun of(Store store, String machine, int jobs, ShortRun.Basis basis) {
    PooledJobs all = new PooledJobs(store, basis);
    store
        .jobs()
        .search(JobQuery.of(JobQuery.Order.NEWEST, jobs).onMachine(machine))
        .forEach(all::gather);
    all.process();
    return all.pooled;
  }

  /** A job without both limits has no width to compare with others and is left out. */
  private void gather(Job job) {
    Limits limits = Limits.of(job.specification());
    if (limits.lower() == null || limits.upper() == null) {
      return;
    }
    Part part = Part.of(limits);
    pooled.joined();
    store
        .readings()
        .latestOfJob(job.id(), Long.MAX_VALUE, READINGS_OF_A_JOB)
        .forEach(reading -> taken.add(new Taken(reading, part)));
    for (Exclusion each : store.readings().exclusionsOfJob(job.id())) {
      pooled.statistics().exclude(each.readingId(), each.excluded() ? each.reason() : "");
    }
  }

  private void process() {
    Observations observations = new Observations(store.readings());
    taken.sort(Comparator.comparingLong(each -> each.reading().id()));
    for (Taken each : taken) {
      Observation seen = observations.of(each.reading());
      if (seen != null) {
        pooled.add(seen, each.part());
      }
    }
  }
}
