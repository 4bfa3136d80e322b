package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.junit.jupiter.api.Test;

/** How a section without gaps is divided into pieces and stretches. */
final class PieceDivisionTest {
  private static final double FEED = 100;

  private static double mean(PieceRun run) {
    return Streams.measured(Streams.evaluated(run)).mean().bendPerMm();
  }

  @Test
  void piecesNoseToTailAreCutWhileTheyRun() {
    Streams stream =
        Streams.usual()
            .piece(
                6000,
                s -> Streams.bent(2000, 250, 60, 1800).applyAsDouble(s - 2000 * (int) (s / 2000)));
    stream.go(2600, FEED);
    assertEquals(1, stream.runs.size());
    stream.go(6300, FEED);
    assertEquals(3, stream.runs.size());
    for (int i = 0; i < 3; i++) {
      PieceRun run = stream.runs.get(i);
      assertEquals(2000, run.part().lengthMm(), 12, "piece " + i);
      assertEquals(1 / 1800.0, mean(run), 3e-8);
    }
    assertEquals(
        stream.runs.get(0).lastSequence() + 1,
        stream.runs.get(1).firstSequence(),
        "no sample belongs to two readings");
  }

  @Test
  void aStraightMiddleShorterThanTheSpanIsNoJoint() {
    Streams stream =
        Streams.usual()
            .piece(
                3000,
                s ->
                    Streams.bent(3000, 250, 60, 1800).applyAsDouble(s)
                        * (Math.abs(s - 1500) < 80 ? 0 : 1));
    stream.go(3300, FEED);
    assertEquals(1, stream.runs.size());
  }

  @Test
  void endlessStockIsDividedIntoStretches() {
    KnownLengths stretches = new KnownLengths(null, 250.0, null, 60.0, 1000.0);
    Streams stream = new Streams(Streams.track(LengthSource.CHANNEL, stretches));
    stream.piece(5000, Streams.bent(5000, 250, 60, 1800)).go(5300, FEED);
    List<Integer> numbers = stream.runs.stream().map(run -> run.part().stretch()).toList();
    assertEquals(List.of(1, 2, 3, 4, 5), numbers);
    PieceEvaluation evaluation =
        new PieceEvaluation(Streams.settings(LengthSource.CHANNEL, stretches));
    for (PieceRun run : stream.runs.subList(0, 4)) {
      PieceResult result = Streams.measured(evaluation.of(run));
      assertEquals(1 / 1800.0, result.mean().bendPerMm(), 3e-8);
    }
    assertEquals(1000, stream.runs.get(1).part().lengthMm(), 1e-9);
  }
}
