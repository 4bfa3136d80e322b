package org.chordlog.cli.service;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.simulator.Scenario;
import org.chordlog.store.Store;

/** The bridge and the job of the demo, stored at its first start only. */
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
    return store.readings().newestOfJob(job.get().id()).map(last -> last.piece() + 1).orElse(1);
  }

  /** What recorded corrections moved the rollers by, all together. */
  double movedMm() {
    return store.jobs().activeOn(DemoStation.NAME).stream()
        .flatMap(job -> store.jobs().eventsOfJob(job.id()).stream())
        .filter(event -> event.kind() == JobEvent.Kind.CORRECTION)
        .mapToDouble(DemoRecords::amount)
        .sum();
  }

  private static double amount(JobEvent event) {
    Double before = event.settingBefore();
    Double after = event.settingAfter();
    return before == null || after == null ? 0 : after - before;
  }

  /** The dial of the middle roller, with what the chord of its rollers says of it, ± 30 %. */
  private RollerScale dial(long nowMicros) {
    double half = scenario.machine().halfDistanceMm();
    double gain = 2 / (half * half);
    return new RollerScale(
        0,
        scenario.job().machine(),
        "dial",
        "mm",
        new RollerScale.Motion(RollerScale.Tighter.HIGHER, 0.005, null, null),
        new RollerScale.Gain(gain, 0.3 * gain),
        new Recorded(nowMicros, BY));
  }

  private void keep() {
    long now = ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
    Bridge bridge = store.gauges().add(scenario.bridge().bridge(), BY);
    store.gauges().mount(DemoStation.NAME, bridge.id(), now, BY);
    Job job = store.jobs().add(job(now), BY);
    store.jobs().activate(DemoStation.NAME, job.id());
    RollerScale unused = store.machines().add(dial(now));
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
