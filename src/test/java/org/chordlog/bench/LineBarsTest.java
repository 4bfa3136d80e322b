package org.chordlog.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The bars of a gauge in the line in short: few pieces with fixed seeds, so that what is asserted
 * stays within what so few can show. {@link LineBars} prints them in full.
 */
final class LineBarsTest {
  private static void met(List<Bar> bars) {
    bars.forEach(bar -> assertTrue(bar.met(), bar.toString()));
  }

  @Test
  void meansCoverAndZonesAreRight() {
    LineMeans means = new LineMeans();
    means.run(3, 41);
    LineScore all = means.all();
    assertEquals(0, all.refused);
    assertEquals(0, means.divided());
    assertEquals(all.pieces, all.right, means.table());
    assertTrue(Math.abs(all.coverage() - 95.45) < 4 * all.coverageError(), means.table());
    assertTrue(Math.abs(all.bias.getMean()) < 1e-4, means.table());
    double local = 100 * all.local.getMean();
    assertTrue(local > 92 && local <= 100, means.table());
  }

  @Test
  void stopsJogsAndPassesLeaveTheMeanAsItIs() {
    LineMoves moves = new LineMoves();
    moves.moves(5, 42);
    met(moves.bars());
  }

  @Test
  void jointsAreCutAndWholePiecesAreNot() {
    LineMoves moves = new LineMoves();
    moves.joints(15, 43);
    met(moves.bars());
  }

  @Test
  void statedFeedSeamsAndLengths() {
    LineMoves moves = new LineMoves();
    moves.others(5, 44);
    met(moves.bars());
  }

  @Test
  void theRollerIsNamedAndNoOther() {
    RippleTrial without = new RippleTrial();
    without.run(LineSetting.of(200, 20, 100, 6000), 0, 8, 45);
    assertTrue(without.singleNamed <= 2 && without.groupNamed == 0, without.row("without"));
    RippleTrial with = new RippleTrial();
    with.run(LineSetting.of(200, 20, 100, 6000), 0.2, 4, 46);
    assertEquals(with.singles, with.singleRight, with.row("with"));
    assertEquals(with.groups, with.groupRight, with.row("with"));
    assertEquals(0.2, with.amplitudes / with.singles, 0.02);
  }

  @Test
  void whatIsKeptGivesTheSameDigits() {
    List<Bar> bars = LineCosts.kept(8);
    met(bars);
  }
}
