package org.chordlog.web;

import static org.chordlog.web.CalibrationColumns.FORM;
import static org.chordlog.web.CalibrationColumns.MOST;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.store.Gauges;
import org.chordlog.web.http.Times;

/** Calibrations out as CSV, by {@link CalibrationColumns}. */
final class CalibrationCsv {
  private final Gauges gauges;

  CalibrationCsv(Gauges gauges) {
    this.gauges = gauges;
  }

  /** All calibrations, the oldest first, so that the file can be read in again. */
  String text() {
    List<Calibration> all = new ArrayList<>(gauges.calibrations(MOST));
    all.sort(Comparator.comparingLong(Calibration::id));
    return TableFile.text(FORM, all.stream().map(this::cells).toList());
  }

  private List<String> cells(Calibration c) {
    List<List<Double>> v = c.covariance();
    List<String> cells = new ArrayList<>(List.of(c.station(), nameOf(c.bridgeId())));
    cells.addAll(List.of(Times.iso(c.takenAtMicros()), Times.iso(c.dueAtMicros()), c.takenBy()));
    for (double mm : new double[] {c.spanMm(), c.zeroOffsetMm(), c.footRadiusMm()}) {
      cells.add(Numbers.plain(mm));
    }
    for (int i = 0; i < 3; i++) {
      cells.add(Numbers.plain(Math.sqrt(v.get(i).get(i))));
    }
    cells.add(Numbers.plain(v.get(0).get(1)));
    cells.add(Numbers.plain(v.get(0).get(2)));
    cells.add(Numbers.plain(v.get(1).get(2)));
    cells.add(Double.isFinite(c.degreesOfFreedom()) ? Numbers.plain(c.degreesOfFreedom()) : "");
    cells.add(c.summary());
    return cells;
  }

  private String nameOf(long bridge) {
    return gauges.bridge(bridge).map(Bridge::name).orElse("");
  }
}
