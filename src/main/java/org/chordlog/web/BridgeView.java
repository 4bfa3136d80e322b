package org.chordlog.web;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.jspecify.annotations.Nullable;

/** A bridge as answered and printed: a row of its values. */
public record BridgeView(
    long id,
    String name,
    double spanMm,
    double spanUncertaintyMm,
    double footRadiusMm,
    double footRadiusUncertaintyMm,
    double skewLimitDegrees,
    @Nullable FootKind footKind) {
  public static BridgeView of(Bridge bridge) {
    return new BridgeView(
        bridge.id(),
        bridge.name(),
        bridge.spanMm(),
        bridge.spanUncertaintyMm(),
        bridge.footRadiusMm(),
        bridge.footRadiusUncertaintyMm(),
        bridge.skewLimitDegrees(),
        bridge.footKind());
  }
}
