package org.chordlog.web;

import org.chordlog.measure.Calibration;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/** Everything but the depth that a radius was computed from. */
record SetUpView(
    long id,
    BridgeView bridge,
    Indicator indicator,
    @Nullable ZeroView zero,
    @Nullable CalibrationView calibration,
    SectionForm section,
    Face measuredFace,
    Face specifiedFace) {
  static SetUpView of(long id, SetUp s) {
    Zero zero = s.zero();
    Calibration calibration = s.calibration();
    return new SetUpView(
        id,
        BridgeView.of(s.bridge()),
        s.indicator(),
        zero == null ? null : ZeroView.of(zero, null),
        calibration == null ? null : CalibrationView.of(calibration),
        SectionForm.of(s.section()),
        s.measuredFace(),
        s.specifiedFace());
  }
}
