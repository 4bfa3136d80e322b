package org.chordlog.station;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Job;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.radius.DepthTolerance;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/** What a station works on: null where nothing is selected, mounted, taken or made yet. */
record WorkSnapshot(
    @Nullable Job job,
    @Nullable Bridge bridge,
    @Nullable Zero zero,
    @Nullable Calibration calibration,
    boolean checkFailed,
    @Nullable Computed computed,
    Shift shift) {
  static final WorkSnapshot NONE =
      new WorkSnapshot(null, null, null, null, false, null, Shift.UNKNOWN);

  /** Who measures, and the material lot in the machine; null where it was not said. */
  record Shift(@Nullable String person, @Nullable String materialLot) {
    static final Shift UNKNOWN = new Shift(null, null);
  }

  /** A set-up as stored, with its model. */
  record Computed(long setUpId, SetUp setUp, RadiusModel model) {}

  long zeroNm() {
    return zero == null ? 0 : zero.valueNm();
  }

  /** Standard error of a mean depth that the job's tolerance permits, nm; 0 without one. */
  long meanMayErrNm() {
    return job == null || computed == null
        ? 0
        : DepthTolerance.meanMayErrNm(computed.model(), job.specification());
  }

  /** Taken on another bridge, or too old. */
  boolean zeroStale(ZeroRule rule, long nowMicros) {
    return zero != null
        && (bridge == null
            || zero.bridgeId() != bridge.id()
            || rule.staleAt(zero.takenAtMicros(), nowMicros));
  }
}
