package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.Placing;
import org.chordlog.radius.RadiusModel;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The gauge's share of a job's scatter: all that is new each time the bridge is placed. */
final class ObservationsTest {
  @TempDir Path directory;
  private Store store;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static Bridge turned(double degrees) {
    return new Bridge(
        0, "turned " + degrees, new Bridge.Span(200, 0.01), new Bridge.Feet(0, 0), degrees);
  }

  /** Sixty readings within ± 9 mm of 1,800 mm; the limits are ± 12 mm. */
  private List<Reading> measured(Job job, Bridge bridge) {
    SetUp usual = Some.setUp(store.gauges().add(bridge, "me"));
    long setUp =
        store
            .readings()
            .keep(
                new SetUp(
                    usual.bridge(),
                    new Indicator(0.001, 0.003, 12.5),
                    usual.zero(),
                    null,
                    usual.section(),
                    usual.measuredFace(),
                    usual.specifiedFace()));
    return LongStream.rangeClosed(1, 60)
        .mapToObj(
            i -> store.readings().append(Some.reading(bridge.name(), i, job.id(), setUp)).join())
        .toList();
  }

  @Test
  void skewIsInTheGaugesShareAndItsBiasIsKnown() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    Reading reading = measured(job, turned(1)).get(0);
    Observation seen = Objects.requireNonNull(new Observations(store.readings()).of(reading));
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    Placing placing = model.placing(reading.depthNm(), 1_500, 12);
    assertEquals(placing.standardUncertaintyMm(), seen.standardUncertainty());
    assertEquals(placing.biasMm(), seen.bias());
    assertTrue(seen.standardUncertainty() > 5 && seen.bias() < -5, seen.toString());
  }

  @Test
  void aBridgeThatStandsAskewIsTooCoarseWhereAStraightOneIsNot() {
    assertFalse(cautions(turned(0)).contains(Caution.Kind.GAUGE_TOO_COARSE));
    List<Caution.Kind> askew = cautions(turned(1));
    assertTrue(askew.contains(Caution.Kind.GAUGE_TOO_COARSE), askew.toString());
    assertTrue(askew.contains(Caution.Kind.GAUGE_BIAS), askew.toString());
  }

  private List<Caution.Kind> cautions(Bridge bridge) {
    Job job = store.jobs().add(Some.job(bridge.name(), "M"), "me");
    measured(job, bridge);
    try (Monitor monitor = new Monitor(store)) {
      return monitor.read(
          job.id(),
          statistics ->
              statistics.summary(statistics.characteristics().get(0), Scope.JOB).cautions().stream()
                  .map(Caution::kind)
                  .toList());
    }
  }
}
