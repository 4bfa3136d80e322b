package org.chordlog.bench;

import java.util.ArrayList;
import java.util.List;

/**
 * The bars of a gauge in the line, over the simulator, as tables with standard errors; about three
 * minutes on one core. An argument below 1 makes all counts smaller in that share.
 */
public final class LineBars {
  private static final long SEED = 20261;

  private LineBars() {}

  public static void main(String[] arguments) {
    double share = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 1;
    LineMeans means = new LineMeans();
    means.run(count(60, share), SEED);
    LineMoves moves = new LineMoves();
    moves.moves(count(100, share), SEED);
    moves.joints(count(300, share), SEED);
    moves.others(count(100, share), SEED);
    LineRipples ripples = new LineRipples();
    ripples.run(count(100, share), SEED);
    ripples.runOval(count(100, share), SEED);
    LineEvenness evenness = new LineEvenness();
    evenness.run(count(200, share), SEED);
    System.out.println("Mean and local radius, pieces of 3 m\n\n" + means.table());
    System.out.println("Feed, joints, seams, lengths; span 200\n\n" + moves.table());
    System.out.println("Rollers, pieces of 6 m at 100 mm/s\n\n" + ripples.table());
    List<Bar> bars = new ArrayList<>(means.bars());
    bars.addAll(moves.bars());
    bars.addAll(ripples.bars());
    bars.addAll(evenness.bars());
    bars.addAll(LineCosts.bars(1_000_000));
    System.out.println(Bar.table(bars));
  }

  private static int count(int full, double share) {
    return Math.max(3, (int) Math.round(full * share));
  }
}
