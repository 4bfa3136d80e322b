package org.chordlog.cli.gauge;

import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Limits that a radius is decided against; each may be absent. */
final class LimitOptions {
  @Option(
      names = {"--lower", "--lsl"},
      paramLabel = "L",
      description = "Lower specification limit.")
  private @Nullable String lower;

  @Option(
      names = {"--upper", "--usl"},
      paramLabel = "L",
      description = "Upper specification limit.")
  private @Nullable String upper;

  /** On the face that is specified. The target plays no part in a decision. */
  Specification specification(GaugeOptions gauge) {
    @Nullable Double least = lower == null ? null : gauge.lengths.mm("--lower", lower);
    @Nullable Double most = upper == null ? null : gauge.lengths.mm("--upper", upper);
    return new Specification(gauge.specified(), 1, least, most);
  }
}
