package org.chordlog.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.study.VarianceComponents.Component;
import org.jspecify.annotations.Nullable;

/**
 * Two-way analysis of variance with random parts and operators (automotive reference manual on
 * measurement systems, 4th ed., appendix A; Montgomery, Introduction to SQC). {@code repeat} is
 * null with a single repeat, whose scatter can't be told from the interaction.
 */
record CrossedAnova(
    Size size,
    MeanSquare part,
    MeanSquare operator,
    MeanSquare interaction,
    @Nullable MeanSquare repeat) {
  private static final String PART = "piece";
  private static final String OPERATOR = "operator";
  private static final String INTERACTION = "piece × operator";
  private static final String REPEAT = "repeat";
  private static final String POOLED = "repeat and interaction, pooled";

  /** Counts of parts, operators and repeats. */
  record Size(int parts, int operators, int repeats) {
    double interactionDegrees() {
      return (parts - 1.0) * (operators - 1);
    }

    double repeatDegrees() {
      return (double) parts * operators * (repeats - 1);
    }
  }

  static CrossedAnova of(CrossedTable table) {
    double[][][] y = table.values();
    Size size = new Size(y.length, y[0].length, table.repeats());
    double[][] cells = cellMeans(y);
    double[] parts = Arrays.stream(cells).mapToDouble(Means::mean).toArray();
    double[] operators =
        IntStream.range(0, size.operators())
            .mapToDouble(j -> Means.mean(column(cells, j)))
            .toArray();
    double perPart = (double) size.operators() * size.repeats();
    double perOperator = (double) size.parts() * size.repeats();
    return new CrossedAnova(
        size,
        MeanSquare.of(PART, perPart * Means.squares(parts), size.parts() - 1.0),
        MeanSquare.of(OPERATOR, perOperator * Means.squares(operators), size.operators() - 1.0),
        MeanSquare.of(
            INTERACTION,
            size.repeats() * interaction(cells, parts, operators),
            size.interactionDegrees()),
        size.repeats() == 1 ? null : MeanSquare.of(REPEAT, within(y), size.repeatDegrees()));
  }

  /** What the mean squares would be on average with these components. */
  static CrossedAnova expected(Size size, double part, double operator, double both, double error) {
    double inner = error + size.repeats() * both;
    double perPart = (double) size.operators() * size.repeats();
    double perOperator = (double) size.parts() * size.repeats();
    return new CrossedAnova(
        size,
        new MeanSquare(PART, inner + perPart * part, size.parts() - 1.0),
        new MeanSquare(OPERATOR, inner + perOperator * operator, size.operators() - 1.0),
        new MeanSquare(INTERACTION, inner, size.interactionDegrees()),
        size.repeats() == 1 ? null : new MeanSquare(REPEAT, error, size.repeatDegrees()));
  }

  static double[][] cellMeans(double[][][] y) {
    return Arrays.stream(y)
        .map(row -> Arrays.stream(row).mapToDouble(Means::mean).toArray())
        .toArray(double[][]::new);
  }

  private static double[] column(double[][] cells, int at) {
    return Arrays.stream(cells).mapToDouble(row -> row[at]).toArray();
  }

  private static double interaction(double[][] cells, double[] parts, double[] operators) {
    double mean = Means.mean(parts);
    double sum = 0;
    for (int i = 0; i < parts.length; i++) {
      for (int j = 0; j < operators.length; j++) {
        double left = (cells[i][j] - parts[i]) - (operators[j] - mean);
        sum += left * left;
      }
    }
    return sum;
  }

  private static double within(double[][][] y) {
    return Arrays.stream(y).flatMap(Arrays::stream).mapToDouble(Means::squares).sum();
  }

  /** p of the interaction against the repeat; NaN where there is no test. */
  double interactionP() {
    return repeat == null || repeat.value() == 0
        ? Double.NaN
        : AnovaRow.p(interaction.value() / repeat.value(), interaction, repeat);
  }

  /** Parts and operators tested against the interaction, or against what it is pooled into. */
  List<AnovaRow> rows(boolean pools) {
    MeanSquare against = pools ? pooled() : interaction;
    List<AnovaRow> rows = new ArrayList<>();
    rows.add(AnovaRow.tested(part, against));
    rows.add(AnovaRow.tested(operator, against));
    if (repeat == null) {
      rows.add(AnovaRow.untested(interaction));
    } else {
      rows.add(AnovaRow.tested(interaction, repeat));
      rows.add(AnovaRow.untested(repeat));
    }
    rows.add(AnovaRow.total(rows));
    if (pools) {
      rows.add(AnovaRow.untested(pooled()));
    }
    return rows;
  }

  MeanSquare pooled() {
    return repeat == null ? interaction : repeat.pooledWith(interaction, POOLED);
  }

  /** With the interaction as a component of its own; without repeats it is the repeatability. */
  VarianceComponents withInteraction() {
    if (repeat == null) {
      return pooledComponents();
    }
    return new VarianceComponents(
        List.of(
            Component.of(Source.REPEATABILITY, Combination.of(repeat)),
            Component.of(
                Source.INTERACTION, Combination.difference(interaction, repeat, size.repeats())),
            operators(interaction),
            parts(interaction)));
  }

  /** With the interaction counted as repeatability. */
  VarianceComponents pooledComponents() {
    MeanSquare pooled = pooled();
    return new VarianceComponents(
        List.of(
            Component.of(Source.REPEATABILITY, Combination.of(pooled)),
            operators(pooled),
            parts(pooled)));
  }

  private Component operators(MeanSquare against) {
    double readings = (double) size.parts() * size.repeats();
    return Component.of(Source.OPERATOR, Combination.difference(operator, against, readings));
  }

  private Component parts(MeanSquare against) {
    double readings = (double) size.operators() * size.repeats();
    return Component.of(Source.PIECE, Combination.difference(part, against, readings));
  }
}
