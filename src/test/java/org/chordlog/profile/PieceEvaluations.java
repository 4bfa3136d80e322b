package org.chordlog.profile;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Tests of what is made of a piece of 3 m that ran through the bridge. */
abstract class PieceEvaluations {
  static final DoubleUnaryOperator HOOP = Streams.bent(3000, 280, 80, 1800);

  static PieceOutcome outcome(DoubleUnaryOperator curvature) {
    return Streams.evaluated(Streams.usual().piece(3000, curvature).go(3300, 100).only());
  }

  static PieceResult result(DoubleUnaryOperator curvature) {
    return Streams.measured(outcome(curvature));
  }

  static List<PieceMark.Kind> marks(PieceResult result) {
    return result.marks().stream().map(PieceMark::kind).toList();
  }
}
