package org.chordlog.web;

import java.util.List;
import java.util.function.BiFunction;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.monitor.Monitor;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.chordlog.verdict.MachineStatement;
import org.jspecify.annotations.Nullable;

/** The one judgement of a machine, for its own page, its stations and its jobs. */
record MachineJudge(Store store, Monitor monitor) {
  private static final int JOBS_LOOKED_AT = 50;

  MachineStatement of(String machine) {
    return of(machine, (statement, behind) -> statement);
  }

  /** With the number of readings that it does not hold yet. */
  <T> T of(String machine, BiFunction<MachineStatement, Long, T> view) {
    Specification asked = asked(machine);
    Double tolerance = toleranceMm(asked);
    Double target = asked == null ? null : (Double) asked.targetMm();
    Double relative = relative(asked);
    return monitor.readMachine(
        machine,
        (statistics, behind) ->
            view.apply(
                new MachineStatement(statistics.verdict(relative), target, tolerance), behind));
  }

  /** Half the tolerance in parts of the target; null: none. */
  @Nullable Double tolerance(String machine) {
    return relative(asked(machine));
  }

  /** Of the newest job with two limits; null: none. */
  private @Nullable Specification asked(String machine) {
    List<Job> newest =
        store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, JOBS_LOOKED_AT).onMachine(machine));
    return newest.stream()
        .map(Job::specification)
        .filter(each -> toleranceMm(each) != null)
        .findFirst()
        .orElse(null);
  }

  private static @Nullable Double toleranceMm(@Nullable Specification asked) {
    Double lower = asked == null ? null : asked.lowerLimitMm();
    Double upper = asked == null ? null : asked.upperLimitMm();
    return lower == null || upper == null ? null : (Double) ((upper - lower) / 2);
  }

  private static @Nullable Double relative(@Nullable Specification asked) {
    Double tolerance = toleranceMm(asked);
    return asked == null || tolerance == null ? null : (Double) (tolerance / asked.targetMm());
  }
}
