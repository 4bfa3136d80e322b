package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * Reads from the store what a station works on; a model is made anew only for a new set-up. Used by
 * the station's thread alone.
 */
final class WorkReader {
  private final String station;
  private final Indicator indicator;
  private final Store store;

  WorkReader(String station, Indicator indicator, Store store) {
    this.station = station;
    this.indicator = indicator;
    this.store = store;
  }

  WorkSnapshot read(WorkSnapshot before) {
    @Nullable Job job = store.jobs().activeOn(station).orElse(null);
    @Nullable Mounted mounted = store.gauges().mounted(station).orElse(null);
    @Nullable Bridge bridge = mounted == null ? null : mounted.bridge();
    @Nullable Zero zero = store.gauges().latestZero(station).orElse(null);
    @Nullable Calibration calibration = calibrationOf(bridge);
    return new WorkSnapshot(
        job,
        mounted,
        zero,
        calibration,
        new WorkSnapshot.Doubts(checkFailed(bridge), doubtful(zero)),
        computed(before, job, bridge, zero, calibration),
        shift(job));
  }

  private WorkSnapshot.Shift shift(@Nullable Job job) {
    return new WorkSnapshot.Shift(
        new PersonAtStation(store.checkpoints(), station).find().orElse(null),
        job == null ? null : store.jobs().materialLot(job.id()).orElse(null));
  }

  private @Nullable Calibration calibrationOf(@Nullable Bridge bridge) {
    return bridge == null
        ? null
        : store.gauges().latestCalibration(station, bridge.id()).orElse(null);
  }

  private boolean doubtful(@Nullable Zero zero) {
    return zero != null && new ZeroLifts(store.checkpoints(), station).doubt(zero.id()) != null;
  }

  private boolean checkFailed(@Nullable Bridge bridge) {
    if (bridge == null) {
      return false;
    }
    List<InterimCheck> last = store.gauges().checks(station, bridge.id(), 1);
    return !last.isEmpty() && !last.get(0).passed();
  }

  private WorkSnapshot.@Nullable Computed computed(
      WorkSnapshot before,
      @Nullable Job job,
      @Nullable Bridge bridge,
      @Nullable Zero zero,
      @Nullable Calibration calibration) {
    if (job == null || bridge == null) {
      return null;
    }
    SetUp setUp =
        new SetUp(
            bridge,
            indicator,
            zero,
            calibration,
            job.section(),
            job.measuredFace(),
            job.specification().face());
    WorkSnapshot.@Nullable Computed known = before.computed();
    return known != null && known.setUp().equals(setUp)
        ? known
        : new WorkSnapshot.Computed(store.readings().keep(setUp), setUp, RadiusModel.of(setUp));
  }
}
