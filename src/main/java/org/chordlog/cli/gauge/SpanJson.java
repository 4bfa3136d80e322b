package org.chordlog.cli.gauge;

import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.SpanOption;
import org.jspecify.annotations.Nullable;

/** What {@code span --json} prints of one bridge. */
record SpanJson(
    Row bridge,
    boolean reachable,
    boolean recommended,
    @Nullable Double depthMm,
    @Nullable Double expandedUncertaintyMm,
    @Nullable Double toleranceOverU,
    List<String> reasons,
    List<String> remarks) {
  /** The bridge's values. */
  record Row(
      long id,
      String name,
      double spanMm,
      double spanUncertaintyMm,
      double footRadiusMm,
      double footRadiusUncertaintyMm,
      double skewLimitDegrees,
      @Nullable FootKind footKind) {
    static Row of(Bridge b) {
      return new Row(
          b.id(),
          b.name(),
          b.spanMm(),
          b.spanUncertaintyMm(),
          b.footRadiusMm(),
          b.footRadiusUncertaintyMm(),
          b.skewLimitDegrees(),
          b.footKind());
    }
  }

  static SpanJson of(SpanOption option) {
    return new SpanJson(
        Row.of(option.bridge()),
        option.reachable(),
        option.recommended(),
        option.depthMm(),
        option.expandedUncertaintyMm(),
        option.toleranceOverU(),
        option.reasons().stream().map(Sentence::toString).toList(),
        option.remarks().stream().map(Sentence::toString).toList());
  }
}
