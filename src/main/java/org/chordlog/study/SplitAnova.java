package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.study.VarianceComponents.Component;
import org.jspecify.annotations.Nullable;

/**
 * Analysis of variance of a pieces with b places each, o operators and r repeats; pieces, places in
 * pieces and operators random. Expectations, with E repeat, OS place × operator, PO piece ×
 * operator, S place, O operator, P piece: piece E + r·OS + br·PO + or·S + bor·P; place E + r·OS +
 * or·S; operator E + r·OS + br·PO + abr·O; piece × operator E + r·OS + br·PO; place × operator E +
 * r·OS. {@code name} is the fixed effect of places that have the same names on all pieces, taken
 * out of {@code place}; null where it is not.
 */
record SplitAnova(
    Size size,
    MeanSquare piece,
    MeanSquare place,
    @Nullable MeanSquare name,
    MeanSquare operator,
    MeanSquare pieceOperator,
    MeanSquare placeOperator,
    @Nullable MeanSquare repeat) {
  /** Counts of pieces, places on each, operators and repeats. */
  record Size(int pieces, int places, int operators, int repeats) {
    double perPiece() {
      return (double) places * operators * repeats;
    }

    double perPlace() {
      return (double) operators * repeats;
    }

    double perOperator() {
      return (double) pieces * places * repeats;
    }

    double perPieceOperator() {
      return (double) places * repeats;
    }
  }

  static SplitAnova of(double[][][][] y, boolean named) {
    return new SplitSums(y).anova(named);
  }

  /** Components, as the record's expectations name them. */
  record Variances(
      double piece,
      double place,
      double operator,
      double pieceOperator,
      double placeOperator,
      double repeat) {}

  /** What the mean squares would be on average with these components and places that are marks. */
  static SplitAnova expected(Size size, Variances v) {
    double inPiece = size.pieces() * (size.places() - 1.0);
    double others = size.operators() - 1.0;
    double placeOperator = v.repeat() + size.repeats() * v.placeOperator();
    double pieceOperator = placeOperator + size.perPieceOperator() * v.pieceOperator();
    double place = placeOperator + size.perPlace() * v.place();
    double piece = pieceOperator + size.perPlace() * v.place() + size.perPiece() * v.piece();
    double operator = pieceOperator + size.perOperator() * v.operator();
    double repeats =
        (double) size.pieces() * size.places() * size.operators() * (size.repeats() - 1);
    return new SplitAnova(
        size,
        new MeanSquare("piece", piece, size.pieces() - 1.0),
        new MeanSquare("place on piece", place, inPiece),
        null,
        new MeanSquare("operator", operator, others),
        new MeanSquare("piece × operator", pieceOperator, (size.pieces() - 1) * others),
        new MeanSquare("place × operator", placeOperator, inPiece * others),
        size.repeats() == 1 ? null : new MeanSquare("repeat", v.repeat(), repeats));
  }

  List<AnovaRow> rows() {
    List<AnovaRow> rows = new ArrayList<>();
    rows.add(pieceRow());
    if (name != null) {
      rows.add(AnovaRow.tested(name, place));
    }
    rows.add(AnovaRow.tested(place, placeOperator));
    rows.add(AnovaRow.tested(operator, pieceOperator));
    rows.add(AnovaRow.tested(pieceOperator, placeOperator));
    if (repeat == null) {
      rows.add(AnovaRow.untested(placeOperator));
    } else {
      rows.add(AnovaRow.tested(placeOperator, repeat));
      rows.add(AnovaRow.untested(repeat));
    }
    rows.add(AnovaRow.total(rows));
    return rows;
  }

  /** Quasi-F (MS piece + MS place × operator)/(MS place + MS piece × operator), Satterthwaite. */
  private AnovaRow pieceRow() {
    MeanSquare above = sum(piece, placeOperator);
    MeanSquare below = sum(place, pieceOperator);
    AnovaRow quasi = AnovaRow.tested(above, below);
    return new AnovaRow(
        piece.source(),
        piece.sumOfSquares(),
        piece.degreesOfFreedom(),
        piece.value(),
        quasi.f(),
        quasi.p(),
        "place + piece × operator − place × operator");
  }

  private static MeanSquare sum(MeanSquare a, MeanSquare b) {
    double value = a.value() + b.value();
    double squares =
        a.value() * a.value() / a.degreesOfFreedom() + b.value() * b.value() / b.degreesOfFreedom();
    return new MeanSquare(a.source(), value, value * value / squares);
  }

  VarianceComponents components() {
    List<Component> parts = new ArrayList<>();
    MeanSquare inner = repeat;
    if (inner == null) {
      parts.add(Component.of(Source.REPEATABILITY, Combination.of(placeOperator)));
    } else {
      parts.add(Component.of(Source.REPEATABILITY, Combination.of(inner)));
      parts.add(difference(Source.PLACE_INTERACTION, placeOperator, inner, size.repeats()));
    }
    parts.add(
        difference(Source.INTERACTION, pieceOperator, placeOperator, size.perPieceOperator()));
    parts.add(difference(Source.OPERATOR, operator, pieceOperator, size.perOperator()));
    parts.add(difference(Source.PLACE, place, placeOperator, size.perPlace()));
    parts.add(pieceComponent());
    return new VarianceComponents(parts);
  }

  private Component pieceComponent() {
    double w = 1 / size.perPiece();
    return Component.of(
        Source.PIECE,
        Combination.NONE
            .plus(w, piece)
            .plus(-w, place)
            .plus(-w, pieceOperator)
            .plus(w, placeOperator));
  }

  private static Component difference(Source source, MeanSquare a, MeanSquare b, double divisor) {
    return Component.of(source, Combination.difference(a, b, divisor));
  }
}
