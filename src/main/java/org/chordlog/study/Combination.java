package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A weighted sum of independent mean squares that estimates a variance. Each mean square appears
 * once; weights may be negative.
 */
public record Combination(List<Term> terms) {
  static final Combination NONE = new Combination(List.of());

  /** One mean square with its weight. */
  public record Term(double weight, MeanSquare square) {
    double value() {
      return weight * square.value();
    }
  }

  public Combination {
    terms = List.copyOf(terms);
  }

  static Combination of(MeanSquare square) {
    return NONE.plus(1, square);
  }

  /** (a − b)/divisor, the usual estimate of one component. */
  static Combination difference(MeanSquare a, MeanSquare b, double divisor) {
    return NONE.plus(1 / divisor, a).plus(-1 / divisor, b);
  }

  Combination plus(double weight, MeanSquare square) {
    List<Term> sum = new ArrayList<>();
    double own = weight;
    for (Term term : terms) {
      if (term.square().equals(square)) {
        own += term.weight();
      } else {
        sum.add(term);
      }
    }
    if (own != 0) {
      sum.add(new Term(own, square));
    }
    return new Combination(sum);
  }

  Combination plus(Combination other) {
    Combination sum = this;
    for (Term term : other.terms) {
      sum = sum.plus(term.weight(), term.square());
    }
    return sum;
  }

  Combination replacing(Map<MeanSquare, MeanSquare> by) {
    return new Combination(
        terms.stream()
            .map(term -> new Term(term.weight(), by.getOrDefault(term.square(), term.square())))
            .toList());
  }

  /** May be negative. */
  double value() {
    return terms.stream().mapToDouble(Term::value).sum();
  }

  /** Weight of each of these mean squares, 0 where it does not appear. */
  double[] weights(List<MeanSquare> squares) {
    double[] weights = new double[squares.size()];
    for (Term term : terms) {
      weights[squares.indexOf(term.square())] = term.weight();
    }
    return weights;
  }
}
