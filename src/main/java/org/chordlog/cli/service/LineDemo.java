package org.chordlog.cli.service;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.Scenario;
import org.chordlog.station.StationFile;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;

/** The station of a demo in which the section runs through, with its bridge, zero, job, rollers. */
record LineDemo(LineScenario scenario, double speed) {
  private static final String BY = "demo";
  private static final double MOST_MM_PER_SECOND = 400;
  private static final double DIAMETER_UNCERTAINTY_MM = 0.1;

  /** How many links the simulator has. */
  int links() {
    return scenario.line().encoder().ownLink() ? 2 : 1;
  }

  /** Makes the records where they are missing. */
  void prepare(Store store) {
    if (store.jobs().activeOn(DemoStation.NAME).isPresent()) {
      return;
    }
    long now = ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
    Bridge bridge = store.gauges().add(scenario.bridge().bridge(), BY);
    store.gauges().mount(DemoStation.NAME, bridge.id(), now, BY);
    Zero unused = store.gauges().add(zero(bridge, now));
    Job job = store.jobs().add(job(now), BY);
    store.jobs().activate(DemoStation.NAME, job.id());
    for (LineScenario.RunOut roller : scenario.line().rollers()) {
      store.machines().add(scenario.job().machine(), roller(roller), new Recorded(now, BY));
    }
  }

  /** As taken on a flat bar before the first piece came. */
  private Zero zero(Bridge bridge, long nowMicros) {
    Scenario.Gauge gauge = scenario.indicator();
    long valueNm = Length.nm(gauge.showsOnFlatMm());
    long scatterNm = Length.nm(gauge.noiseSteps() * gauge.resolutionMm());
    Recorded taken = new Recorded(nowMicros, BY);
    return new Zero(0, DemoStation.NAME, bridge.id(), valueNm, scatterNm, 100, taken);
  }

  private static Roller roller(LineScenario.RunOut roller) {
    return new Roller(
        roller.name(), roller.diameterMm(), DIAMETER_UNCERTAINTY_MM, roller.side(), true);
  }

  private Job job(long nowMicros) {
    Scenario.Order order = scenario.job();
    return Job.opened(
        new Job.Order(order.name(), order.part(), ""),
        new Job.Workplace(order.machine(), DemoStation.NAME),
        new Job.Inspection(
            order.tube(),
            order.measuredFace(),
            new Specification(
                order.specifiedFace(),
                order.targetMm(),
                order.targetMm() - order.toleranceMm(),
                order.targetMm() + order.toleranceMm()),
            new Plan(order.positions(), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))),
        nowMicros);
  }

  /** The simulator's addresses: a path or host:port, and that of the encoder's own link if any. */
  void start(Stations stations, List<String> addresses) {
    StationFile.parse(yaml(addresses), "demo").forEach(stations::add);
  }

  private static String feed(List<String> addresses) {
    return addresses.size() == 1
        ? "length: channel, channel: 2"
        : "length: link, link: "
            + DemoStation.link(addresses.get(1))
            + ", profile: {framing: {kind: terminator, terminator: \"\\r\\n\"},"
            + " pattern: '(?P<value>[+-][0-9]+)', unit: MM}";
  }

  private static String frames(List<String> addresses) {
    return addresses.size() == 1
        ? "(?P<value1>[+-][0-9]+\\.[0-9]+);(?P<value2>[+-][0-9]+)"
        : "(?P<value1>[+-][0-9]+\\.[0-9]+)";
  }

  private String yaml(List<String> addresses) {
    Scenario.Gauge gauge = scenario.indicator();
    return String.format(
        Locale.ROOT,
        """
        stations:
          - name: %s
            machine: %s
            link: %s
            profile:
              framing: {kind: terminator, terminator: "\\r\\n"}
              pattern: '%s'
              unit: MM
            channel: 1
            direction: counts_up
            indicator: {resolutionMm: %s, permissibleErrorMm: %s, travelMm: %s}
            capture: {mode: passing, freeAirMm: %s}
            feed: {%s, mmPerCount: %s, mostMmPerSecond: %s}
        """,
        DemoStation.NAME,
        DemoStation.text(scenario.job().machine()),
        DemoStation.link(addresses.get(0)),
        frames(addresses),
        gauge.resolutionMm(),
        gauge.permissibleErrorMm(),
        gauge.travelMm(),
        gauge.showsOnFlatMm() - gauge.protrusionMm(),
        feed(addresses),
        scenario.line().encoder().mmPerCount(),
        Math.min(10_000, MOST_MM_PER_SECOND * Math.max(1, speed)));
  }
}
