package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.Widest;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Gauges;

/**
 * How wide a master may be: some bridge in use has to tell it from a flat with some indicator of
 * the stations. Before there are any, {@link #MOST_MM}, which a bridge of a metre and the finest
 * indicators just do.
 */
record MasterReach(List<Bridge> bridges, List<Indicator> indicators) {
  static final double MOST_MM = 10_000_000;

  static MasterReach of(Gauges gauges, Stations stations) {
    List<Indicator> indicators =
        stations.settings().stream().map(StationSettings::indicator).toList();
    return new MasterReach(gauges.bridges(), indicators);
  }

  /** The radius; {@link BadInput} of {@code field} where no bridge reaches it. */
  double checked(String field, double radiusMm) {
    double widest = widestMm();
    if (radiusMm > widest) {
      throw new BadInput(
          field,
          radiusMm,
          "is too wide: no bridge here could tell it from a flat",
          Sentence.of("at most %s", Quantity.stated(widest)));
    }
    return radiusMm;
  }

  private double widestMm() {
    return bridges.stream()
        .flatMap(bridge -> indicators.stream().map(each -> Widest.radiusMm(bridge, each)))
        .max(Double::compare)
        .filter(widest -> widest < MOST_MM)
        .orElse(MOST_MM);
  }
}
