package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** Set-ups and gauges in the files that released versions wrote. */
final class ReleasedGaugesTest extends Released {
  @Test
  void setUpsWithEveryKindOfSection() throws Exception {
    try (SqliteStore store = openFull()) {
      Bridge turned = store.gauges().bridge(2).orElseThrow();
      Bridge edge = store.gauges().bridge(3).orElseThrow();
      assertEquals(Some.setUp(turned), store.readings().setUp(1).orElseThrow());
      assertEquals(
          bare(edge, new Section.Flat(10, 60), Face.OUTER, Face.OUTER),
          store.readings().setUp(2).orElseThrow());
      List<Section> sections = sections();
      for (int i = 0; i < sections.size(); i++) {
        assertEquals(
            bare(edge, sections.get(i), Face.INNER, Face.CENTRELINE),
            store.readings().setUp(3 + i).orElseThrow());
      }
    }
  }

  private static SetUp bare(Bridge bridge, Section section, Face measured, Face specified) {
    Indicator indicator = new Indicator(0.001, 0.003, 25);
    return new SetUp(bridge, indicator, null, null, section, measured, specified);
  }

  /** Written once more, a set-up is the same text, so that it is not stored twice. */
  @Test
  void aSetUpOfTheReleasedVersionIsFoundAgain() throws Exception {
    try (SqliteStore store = openFull()) {
      for (long id = 1; id <= 6; id++) {
        assertEquals(id, store.readings().keep(store.readings().setUp(id).orElseThrow()));
      }
    }
  }

  @Test
  void bridgesZerosCalibrationsMastersAndChecks() throws Exception {
    try (SqliteStore store = openFull()) {
      Bridge turned =
          new Bridge(
              2, "200 turned", new Bridge.Span(200.02, 0.01), new Bridge.Feet(5, 0.005), 0.5);
      Bridge edge = new Bridge(3, "edge 100", new Bridge.Span(100, 0.02), new Bridge.Feet(0, 0), 1);
      assertEquals(List.of(turned, edge), store.gauges().bridges());
      assertEquals("200", store.gauges().bridge(1).orElseThrow().name());
      assertEquals(turned, store.gauges().mountedOn("A").orElseThrow());
      assertEquals(edge, store.gauges().mountedOn("B").orElseThrow());
      assertEquals(
          List.of(
              new Zero(2, "A", 2, -12_341_000, 0, 1, new Recorded(T0 + 4, "you")),
              new Zero(1, "A", 2, -12_340_000, 2_000, 20, new Recorded(T0 + 3, "me"))),
          store.gauges().zeros("A", 10));
      assertEquals(
          Some.calibration(2).covariance(), store.gauges().calibrations(1).get(0).covariance());
      assertEquals("two masters", store.gauges().latestCalibration("A", 2).get().summary());
      assertEquals(
          List.of(
              new Master(1, "disc 1800", Face.OUTER, 1800.25, 0.08),
              new Master(2, "ring 900", Face.INNER, 900.5, 0.05)),
          store.gauges().masters());
      assertEquals(
          List.of(
              new InterimCheck(
                  2,
                  "A",
                  2,
                  1,
                  new InterimCheck.Comparison(null, 1800.25, 3, false),
                  new Recorded(T0 + 6, "me")),
              new InterimCheck(
                  1,
                  "A",
                  2,
                  1,
                  new InterimCheck.Comparison(1801.5, 1800.25, 3, true),
                  new Recorded(T0 + 5, "me"))),
          store.gauges().checks("A", 2, 10));
    }
  }
}
