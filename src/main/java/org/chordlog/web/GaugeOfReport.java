package org.chordlog.web;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.BudgetLine;
import org.chordlog.radius.RadiusModel;
import org.chordlog.report.UncertaintyLine;
import org.chordlog.store.Store;

/** What a report says of the gauges that its readings were taken with. */
final class GaugeOfReport {
  private static final int MOST_CHECKS = 12;

  private final Store store;
  private final List<Reading> readings;
  private final Map<Long, SetUp> setUps;

  GaugeOfReport(Store store, List<Reading> readings) {
    this.store = store;
    this.readings = readings;
    setUps =
        readings.stream()
            .map(Reading::setUpId)
            .distinct()
            .collect(
                Collectors.toMap(
                    Function.identity(), id -> store.readings().setUp(id).orElseThrow()));
  }

  /** By their id. */
  Map<Long, SetUp> setUps() {
    return setUps;
  }

  /** The newest at that station, of the bridges that the readings were taken with. */
  List<InterimCheck> checks(String station) {
    return readings.stream()
        .map(reading -> setUp(reading).bridge().id())
        .distinct()
        .flatMap(id -> store.gauges().checks(station, id, MOST_CHECKS).stream())
        .sorted(Comparator.comparingLong(InterimCheck::takenAtMicros).reversed())
        .limit(MOST_CHECKS)
        .toList();
  }

  private SetUp setUp(Reading reading) {
    return Objects.requireNonNull(setUps.get(reading.setUpId()));
  }

  /** The budget of one of the readings. */
  List<UncertaintyLine> uncertainty(Reading newest) {
    return RadiusModel.of(setUp(newest))
        .budget(newest.depthNm(), newest.captured().scatterNm(), newest.captured().sampleCount())
        .lines()
        .stream()
        .map(GaugeOfReport::line)
        .toList();
  }

  private static UncertaintyLine line(BudgetLine line) {
    return new UncertaintyLine(
        line.source(),
        line.value(),
        line.distribution().word(),
        line.standardUncertainty(),
        line.unit(),
        line.contribution());
  }
}
