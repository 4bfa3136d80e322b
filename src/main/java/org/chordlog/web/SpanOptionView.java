package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.SpanOption;
import org.jspecify.annotations.Nullable;

/** What one bridge would do for a job, as answered. */
record SpanOptionView(
    BridgeView bridge,
    boolean reachable,
    boolean recommended,
    @Nullable Double depthMm,
    @Nullable Double expandedUncertaintyMm,
    @Nullable Double toleranceOverU,
    List<Sentence> reasons,
    List<Sentence> remarks) {
  static SpanOptionView of(SpanOption option) {
    return new SpanOptionView(
        BridgeView.of(option.bridge()),
        option.reachable(),
        option.recommended(),
        option.depthMm(),
        option.expandedUncertaintyMm(),
        option.toleranceOverU(),
        option.reasons(),
        option.remarks());
  }
}
