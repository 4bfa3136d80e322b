package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Sums over points, each weighted by its count of values, on values less a common origin; squares
 * within are those within the points.
 */
final class Sums {
  /** Rounding leaves at least that part of a sum of squares uncertain. */
  private static final double ROUNDING = 1e-12;

  private long points;
  private double weight;
  private double sum;
  private double squares;
  private double squaresWithin;
  private double freedomWithin;

  static Sums of(Point point, double origin) {
    Sums sums = new Sums();
    double value = point.mean() - origin;
    int size = point.size();
    sums.points = 1;
    sums.weight = size;
    sums.sum = size * value;
    sums.squares = size * value * value;
    sums.squaresWithin = size < 2 ? 0 : point.deviation() * point.deviation() * (size - 1);
    sums.freedomWithin = size - 1.0;
    return sums;
  }

  void add(Sums other) {
    points += other.points;
    weight += other.weight;
    sum += other.sum;
    squares += other.squares;
    squaresWithin += other.squaresWithin;
    freedomWithin += other.freedomWithin;
  }

  void subtract(Sums other) {
    points -= other.points;
    weight -= other.weight;
    sum -= other.sum;
    squares -= other.squares;
    squaresWithin -= other.squaresWithin;
    freedomWithin -= other.freedomWithin;
  }

  Sums without(Sums other) {
    Sums rest = new Sums();
    rest.add(this);
    rest.subtract(other);
    return rest;
  }

  long points() {
    return points;
  }

  /** Count of values. */
  double weight() {
    return weight;
  }

  double mean() {
    return sum / weight;
  }

  /** Sum of squares of the points about their mean. */
  double squaresBetween() {
    double rest = squares - sum * sum / weight;
    return rest > ROUNDING * squares ? rest : 0;
  }

  double squaresWithin() {
    return squaresWithin;
  }

  double freedomWithin() {
    return freedomWithin;
  }

  void pack(Packer packer) {
    packer.put(points).put(weight).put(sum).put(squares).put(squaresWithin).put(freedomWithin);
  }

  static Sums unpack(Unpacker from) {
    Sums sums = new Sums();
    sums.points = from.aLong();
    sums.weight = from.aDouble();
    sums.sum = from.aDouble();
    sums.squares = from.aDouble();
    sums.squaresWithin = from.aDouble();
    sums.freedomWithin = from.aDouble();
    return sums;
  }
}
