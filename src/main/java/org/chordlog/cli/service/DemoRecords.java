package org.chordlog.cli.service;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.simulator.Scenario;
import org.chordlog.store.Store;

/** The bridge and the job of the demo, kept once. */
record DemoRecords(Scenario scenario, Store store) {
  private static final String BY = "demo";
  private static final int SUBGROUP_SIZE = 5;

  /** Makes them where they are missing; the piece that comes next. */
  int prepare() {
    Optional<Job> job = store.jobs().activeOn(DemoStation.NAME);
    if (job.isEmpty()) {
      keep();
      return 1;
    }
    List<Reading> last = store.readings().latestOfJob(job.get().id(), Long.MAX_VALUE, 1);
    return last.isEmpty() ? 1 : last.get(0).piece() + 1;
  }

  private void keep() {
    long now = ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
    Bridge bridge = store.gauges().add(scenario.bridge().bridge(), BY);
    store.gauges().mount(DemoStation.NAME, bridge.id(), now, BY);
    Job job = store.jobs().add(job(now), BY);
    store.jobs().activate(DemoStation.NAME, job.id());
  }

  private Job job(long nowMicros) {
    Scenario.Order order = scenario.job();
    return Job.opened(
        new Job.Order(order.name(), order.part(), scenario.lots().get(0).name()),
        new Job.Workplace(order.machine(), DemoStation.NAME),
        new Job.Inspection(
            order.tube(),
            order.measuredFace(),
            specification(order),
            new Plan(
                order.positions(), new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, SUBGROUP_SIZE))),
        nowMicros);
  }

  private static Specification specification(Scenario.Order order) {
    return new Specification(
        order.specifiedFace(),
        order.targetMm(),
        order.targetMm() - order.toleranceMm(),
        order.targetMm() + order.toleranceMm());
  }
}
