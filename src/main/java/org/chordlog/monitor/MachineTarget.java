package org.chordlog.monitor;

import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;

/** What is asked of a machine's pieces now. */
public final class MachineTarget {
  private static final int JOBS_LOOKED_AT = 50;

  private MachineTarget() {}

  /** Of the newest job with two limits. */
  public static Optional<Specification> of(Store store, String machine) {
    JobQuery newest = JobQuery.of(JobQuery.Order.NEWEST, JOBS_LOOKED_AT).onMachine(machine);
    return store.jobs().search(newest).stream()
        .map(Job::specification)
        .filter(each -> each.lowerLimitMm() != null && each.upperLimitMm() != null)
        .findFirst();
  }

  /** Half the width between two limits, mm. */
  public static double toleranceMm(Specification asked) {
    Double lower = asked.lowerLimitMm();
    Double upper = asked.upperLimitMm();
    if (lower == null || upper == null) {
      throw new IllegalArgumentException("needs two limits: " + asked);
    }
    return (upper - lower) / 2;
  }
}
