package org.chordlog.station;

import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Why a capture is no measurement of a study of the gauge. */
final class StudyRefusals {
  /** Curvature against the nominal: what is flatter or tighter is another piece. */
  private static final double FLATTEST = 0.4;

  private static final double TIGHTEST = 2.5;

  private StudyRefusals() {}

  /** What the gauge itself lacks; null where it can measure. */
  static @Nullable Rejected ofGauge(
      ZeroRule zero, CapturedDepth depth, WorkSnapshot work, boolean zeroMoved) {
    long nanos = depth.monotonicNanos();
    if (work.bridge() == null) {
      return new Rejected(Reason.NO_BRIDGE, nanos, "say which bridge is on this station");
    }
    if (work.zero() == null) {
      return new Rejected(Reason.NOT_ZEROED, nanos, "take the zero on a flat");
    }
    if (work.zeroOfOtherBridge()) {
      return new Rejected(Reason.ZERO_OF_OTHER_BRIDGE, nanos, "take the zero on a flat again");
    }
    return zeroMoved || work.zeroTooOld(zero, depth.wallMicros())
        ? new Rejected(Reason.STALE_ZERO, nanos, "take the zero on a flat again")
        : null;
  }

  /** Whether it is far from the masters of the study, or from its target where it has none. */
  static boolean far(RadiusEstimate radius, GaugeStudy study) {
    double bend = Math.abs(radius.curvaturePerMm());
    double target = study.subject().specification().targetMm();
    double tightest =
        study.subject().masters().stream()
            .mapToDouble(each -> each.radiusMm())
            .min()
            .orElse(target);
    double flattest =
        study.subject().masters().stream()
            .mapToDouble(each -> each.radiusMm())
            .max()
            .orElse(target);
    return radius.flat() || bend * flattest < FLATTEST || bend * tightest > TIGHTEST;
  }

  static Sentence farWords(RadiusEstimate radius, GaugeStudy study) {
    return Sentence.of(
        "R %s where about %s is measured: stand the bridge on the piece asked for",
        Quantity.fixed(1 / Math.abs(radius.curvaturePerMm()), 0),
        Quantity.stated(study.subject().specification().targetMm()));
  }
}
