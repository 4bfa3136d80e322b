package org.chordlog.station;

import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.radius.DepthTolerance;
import org.chordlog.radius.RadiusModel;
import org.chordlog.station.ZeroRule.Policy;
import org.jspecify.annotations.Nullable;

/** What a station works on: null where nothing is selected, mounted, taken or made yet. */
record WorkSnapshot(
    @Nullable Job job,
    @Nullable Mounted mounted,
    @Nullable Zero zero,
    @Nullable Calibration calibration,
    Doubts doubts,
    @Nullable Computed computed,
    Shift shift) {
  static final WorkSnapshot NONE =
      new WorkSnapshot(null, null, null, null, Doubts.NONE, null, Shift.UNKNOWN);

  /** Whether the newest check failed, and whether free air speaks against the zero. */
  record Doubts(boolean checkFailed, boolean zeroDoubtful) {
    static final Doubts NONE = new Doubts(false, false);
  }

  /** Who measures, and the material lot in the machine; null where it was not said. */
  record Shift(@Nullable String person, @Nullable String materialLot) {
    static final Shift UNKNOWN = new Shift(null, null);
  }

  /** A set-up as stored, with its model. */
  record Computed(long setUpId, SetUp setUp, RadiusModel model) {}

  @Nullable Bridge bridge() {
    return mounted == null ? null : mounted.bridge();
  }

  boolean checkFailed() {
    return doubts.checkFailed();
  }

  long zeroNm() {
    return zero == null ? 0 : zero.valueNm();
  }

  /** Standard error of a mean depth that the job's tolerance permits, nm; 0 without one. */
  long meanMayErrNm() {
    return job == null || computed == null
        ? 0
        : DepthTolerance.meanMayErrNm(computed.model(), job.specification());
  }

  boolean zeroTooOld(ZeroRule rule, long nowMicros) {
    return zero != null && rule.staleAt(zero.takenAtMicros(), nowMicros);
  }

  /** There is a zero, but it does not hold for the bridge as it is mounted. */
  boolean zeroOfOtherBridge() {
    return zero != null && mounted != null && !mounted.keeps(zero);
  }

  /**
   * Whether a depth is shown from it; one of another bridge counts as none where none is refused.
   */
  boolean hasZero(ZeroRule rule) {
    return zero != null && !(zeroOfOtherBridge() && rule.whenMissing() == Policy.REFUSE);
  }

  /** Why a depth may not be taken from the zero there is; null where it may. */
  @Nullable Reason zeroLacks(ZeroRule rule, long nowMicros) {
    if (zero == null) {
      return rule.whenMissing() == Policy.REFUSE ? Reason.NOT_ZEROED : null;
    }
    boolean other = zeroOfOtherBridge();
    if (other && (rule.whenMissing() == Policy.REFUSE || rule.whenStale() == Policy.REFUSE)) {
      return Reason.ZERO_OF_OTHER_BRIDGE;
    }
    boolean old = zeroTooOld(rule, nowMicros);
    return old && rule.whenStale() == Policy.REFUSE ? Reason.STALE_ZERO : null;
  }
}
