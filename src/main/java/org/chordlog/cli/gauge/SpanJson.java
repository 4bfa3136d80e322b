package org.chordlog.cli.gauge;

import java.util.List;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.SpanOption;
import org.chordlog.web.BridgeView;
import org.jspecify.annotations.Nullable;

/** What {@code span --json} prints of one bridge. */
record SpanJson(
    BridgeView bridge,
    boolean reachable,
    boolean recommended,
    @Nullable Double depthMm,
    @Nullable Double expandedUncertaintyMm,
    @Nullable Double toleranceOverU,
    List<String> reasons,
    List<String> remarks) {
  static SpanJson of(SpanOption option) {
    return new SpanJson(
        BridgeView.of(option.bridge()),
        option.reachable(),
        option.recommended(),
        option.depthMm(),
        option.expandedUncertaintyMm(),
        option.toleranceOverU(),
        option.reasons().stream().map(Sentence::toString).toList(),
        option.remarks().stream().map(Sentence::toString).toList());
  }
}
