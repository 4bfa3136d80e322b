package org.chordlog.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chordlog.study.VarianceComponents.Component;
import org.jspecify.annotations.Nullable;

/**
 * Analysis of variance of members nested in groups, with repeats: μ + group + member in group +
 * repeat, all random. {@code group} is null with a single group, {@code repeat} with one repeat.
 */
record NestedAnova(
    Size size, @Nullable MeanSquare group, MeanSquare member, @Nullable MeanSquare repeat) {
  /** Counts of groups, of members in each, and of repeats. */
  record Size(int groups, int members, int repeats) {}

  /** What groups and members are called in tables. */
  record Names(String group, String member) {
    String nested() {
      return member + " in " + group;
    }
  }

  static NestedAnova of(double[][][] y, Names names) {
    Size size = new Size(y.length, y[0].length, y[0][0].length);
    double[][] cells = CrossedAnova.cellMeans(y);
    double[] groups = Arrays.stream(cells).mapToDouble(Means::mean).toArray();
    double between = (double) size.members() * size.repeats() * squares(groups);
    double members = size.repeats() * Arrays.stream(cells).mapToDouble(Means::squares).sum();
    double within = Arrays.stream(y).flatMap(Arrays::stream).mapToDouble(Means::squares).sum();
    return of(size, names, between, members, within);
  }

  /** From the sums of squares between groups, of members in groups, and of repeats. */
  static NestedAnova of(Size size, Names names, double between, double members, double within) {
    double memberDegrees = size.groups() * (size.members() - 1.0);
    double repeatDegrees = (double) size.groups() * size.members() * (size.repeats() - 1);
    return new NestedAnova(
        size,
        size.groups() == 1 ? null : MeanSquare.of(names.group(), between, size.groups() - 1.0),
        MeanSquare.of(size.groups() == 1 ? names.member() : names.nested(), members, memberDegrees),
        size.repeats() == 1 ? null : MeanSquare.of("repeat", within, repeatDegrees));
  }

  private static double squares(double[] groups) {
    return groups.length == 1 ? 0 : Means.squares(groups);
  }

  List<AnovaRow> rows() {
    List<AnovaRow> rows = new ArrayList<>();
    if (group != null) {
      rows.add(AnovaRow.tested(group, member));
    }
    rows.add(repeat == null ? AnovaRow.untested(member) : AnovaRow.tested(member, repeat));
    if (repeat != null) {
      rows.add(AnovaRow.untested(repeat));
    }
    rows.add(AnovaRow.total(rows));
    return rows;
  }

  /** Repeatability, members and groups as components; {@code groups} says what groups are. */
  VarianceComponents components(Source groups) {
    List<Component> parts = new ArrayList<>();
    MeanSquare inner = repeat;
    if (inner == null) {
      parts.add(Component.of(Source.REPEATABILITY, Combination.of(member)));
    } else {
      parts.add(Component.of(Source.REPEATABILITY, Combination.of(inner)));
      parts.add(Component.of(Source.PIECE, Combination.difference(member, inner, size.repeats())));
    }
    if (group != null) {
      double readings = (double) size.members() * size.repeats();
      parts.add(Component.of(groups, Combination.difference(group, member, readings)));
    }
    return new VarianceComponents(parts);
  }
}
