package org.chordlog.study;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Sums of squares of a split design, from cell means. */
final class SplitSums {
  private final double[][][][] y;
  private final SplitAnova.Size size;
  private final double[][][] cells;
  private final double[][] places;
  private final double[] pieces;
  private final double[] operators;
  private final double[][] both;
  private final double mean;

  SplitSums(double[][][][] y) {
    this.y = y;
    size = new SplitAnova.Size(y.length, y[0].length, y[0][0].length, y[0][0][0].length);
    cells = Arrays.stream(y).map(CrossedAnova::cellMeans).toArray(double[][][]::new);
    places =
        Arrays.stream(cells)
            .map(piece -> Arrays.stream(piece).mapToDouble(Means::mean).toArray())
            .toArray(double[][]::new);
    pieces = Arrays.stream(places).mapToDouble(Means::mean).toArray();
    both = Arrays.stream(cells).map(this::operatorMeans).toArray(double[][]::new);
    operators = operatorMeans(both);
    mean = Means.mean(pieces);
  }

  private double[] operatorMeans(double[][] rows) {
    return IntStream.range(0, size.operators())
        .mapToDouble(k -> Means.mean(Arrays.stream(rows).mapToDouble(row -> row[k]).toArray()))
        .toArray();
  }

  SplitAnova anova(boolean named) {
    double a = size.pieces();
    double inPiece = a * (size.places() - 1);
    double others = size.operators() - 1.0;
    double all = size.perPlace() * Arrays.stream(places).mapToDouble(Means::squares).sum();
    double names = named ? a * size.perPlace() * nameSquares() : 0;
    double nameDegrees = named ? size.places() - 1 : 0;
    return new SplitAnova(
        size,
        MeanSquare.of("piece", size.perPiece() * Means.squares(pieces), a - 1),
        MeanSquare.of("place on piece", Math.max(0, all - names), inPiece - nameDegrees),
        named ? MeanSquare.of("name of place", names, nameDegrees) : null,
        MeanSquare.of("operator", size.perOperator() * Means.squares(operators), others),
        MeanSquare.of(
            "piece × operator", size.perPieceOperator() * pieceOperator(), (a - 1) * others),
        MeanSquare.of("place × operator", size.repeats() * placeOperator(), inPiece * others),
        size.repeats() == 1 ? null : repeat());
  }

  private double nameSquares() {
    double[] names =
        IntStream.range(0, size.places())
            .mapToDouble(
                s -> Means.mean(Arrays.stream(places).mapToDouble(piece -> piece[s]).toArray()))
            .toArray();
    return Means.squares(names);
  }

  private double pieceOperator() {
    double sum = 0;
    for (int i = 0; i < pieces.length; i++) {
      for (int k = 0; k < operators.length; k++) {
        double left = (both[i][k] - pieces[i]) - (operators[k] - mean);
        sum += left * left;
      }
    }
    return sum;
  }

  private double placeOperator() {
    double sum = 0;
    for (int i = 0; i < pieces.length; i++) {
      for (int s = 0; s < size.places(); s++) {
        for (int k = 0; k < operators.length; k++) {
          double left = (cells[i][s][k] - places[i][s]) - (both[i][k] - pieces[i]);
          sum += left * left;
        }
      }
    }
    return sum;
  }

  private MeanSquare repeat() {
    double within =
        Arrays.stream(y)
            .flatMap(Arrays::stream)
            .flatMap(Arrays::stream)
            .mapToDouble(Means::squares)
            .sum();
    double degrees =
        (double) size.pieces() * size.places() * size.operators() * (size.repeats() - 1);
    return MeanSquare.of("repeat", within, degrees);
  }
}
