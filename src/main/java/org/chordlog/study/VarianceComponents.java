package org.chordlog.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * The components that a design splits the variance into, each as its estimate from mean squares.
 */
public record VarianceComponents(List<Component> components) {
  /**
   * One component: how mean squares estimate it, which may give a negative value, and the variance
   * that is told, which never does.
   */
  public record Component(Source source, Combination combination, double variance) {
    static Component of(Source source, Combination combination) {
      return new Component(source, combination, Math.max(0, combination.value()));
    }

    /** The estimate is below 0 and told as 0. */
    boolean clipped() {
      return combination.value() < 0;
    }
  }

  public VarianceComponents {
    components = List.copyOf(components);
  }

  List<Component> where(Predicate<Source> wanted) {
    return components.stream().filter(component -> wanted.test(component.source())).toList();
  }

  List<Component> gauge() {
    return where(Source::gauge);
  }

  List<Component> product() {
    return where(source -> !source.gauge());
  }

  /** The gauge's variance as one estimate from mean squares. */
  public Combination gaugeCombination() {
    return sum(gauge());
  }

  static Combination sum(List<Component> parts) {
    Combination sum = Combination.NONE;
    for (Component part : parts) {
      sum = sum.plus(part.combination());
    }
    return sum;
  }

  static double variance(List<Component> parts) {
    return parts.stream().mapToDouble(Component::variance).sum();
  }

  /** All mean squares that any component uses, each once. */
  List<MeanSquare> squares() {
    return components.stream()
        .flatMap(component -> component.combination().terms().stream())
        .map(Combination.Term::square)
        .distinct()
        .toList();
  }

  /** The same estimates from other mean squares. */
  VarianceComponents replacing(UnaryOperator<MeanSquare> by) {
    Map<MeanSquare, MeanSquare> replaced = new LinkedHashMap<>();
    squares().forEach(square -> replaced.put(square, by.apply(square)));
    return new VarianceComponents(
        components.stream()
            .map(part -> Component.of(part.source(), part.combination().replacing(replaced)))
            .toList());
  }

  /** With the process's own variance in place of what the study's parts show: σ² less gauge. */
  VarianceComponents withProcess(double processVariance) {
    Combination parts = Combination.of(MeanSquare.stated("process", processVariance));
    for (Combination.Term term : gaugeCombination().terms()) {
      parts = parts.plus(-term.weight(), term.square());
    }
    double left = Math.max(0, processVariance - variance(gauge()));
    List<Component> all = new ArrayList<>(gauge());
    all.add(new Component(Source.PIECE, parts, left));
    return new VarianceComponents(all);
  }
}
