package org.chordlog.radius;

import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * What one bridge would do for a radius: whether it can reach it and why not, the depth to expect,
 * U at 95.45 % (the larger side), tolerance / U, and remarks. Depth and U are null where not
 * reached.
 */
public record SpanOption(
    Bridge bridge,
    boolean reachable,
    boolean recommended,
    @Nullable Double depthMm,
    @Nullable Double expandedUncertaintyMm,
    @Nullable Double toleranceOverU,
    List<Sentence> reasons,
    List<Sentence> remarks) {
  public SpanOption {
    reasons = List.copyOf(reasons);
    remarks = List.copyOf(remarks);
  }

  SpanOption withRecommendation() {
    return new SpanOption(
        bridge, reachable, true, depthMm, expandedUncertaintyMm, toleranceOverU, reasons, remarks);
  }

  static SpanOption refused(Bridge bridge, @Nullable Double depthMm, Sentence reason) {
    return new SpanOption(bridge, false, false, depthMm, null, null, List.of(reason), List.of());
  }
}
