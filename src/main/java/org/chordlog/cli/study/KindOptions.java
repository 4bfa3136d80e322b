package org.chordlog.cli.study;

import org.chordlog.cli.common.TypedNumber;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options of single kinds of studies. */
final class KindOptions {
  @Option(
      names = "--other-pieces",
      description = "nested: each repeat was another piece of one lot and setting.")
  private boolean otherPieces;

  @Option(
      names = "--marks",
      description = "split: places are marks, even where all pieces have the same names for them.")
  private boolean marks;

  @Option(
      names = "--span",
      paramLabel = "L",
      description = "linearity: references are radii, values depths on this span.")
  private @Nullable String span;

  @Option(names = "--foot-radius", paramLabel = "L", description = "Radius of the feet there (0).")
  private @Nullable String footRadius;

  @Option(
      names = "--share",
      paramLabel = "K",
      defaultValue = "20",
      description = "type1: share of the tolerance, percent (${DEFAULT-VALUE}).")
  private double sharePercent;

  @Option(
      names = "--deviations",
      paramLabel = "L",
      defaultValue = "6",
      description = "type1: standard deviations, 6 or 4 (${DEFAULT-VALUE}).")
  private double deviations;

  boolean otherPieces() {
    return otherPieces;
  }

  boolean marks() {
    return marks;
  }

  @Nullable Double spanMm() {
    return TypedNumber.given("--span", span);
  }

  double footRadiusMm() {
    Double radius = TypedNumber.given("--foot-radius", footRadius);
    return radius == null ? 0 : radius;
  }

  double sharePercent() {
    return sharePercent;
  }

  double deviations() {
    return deviations;
  }
}
