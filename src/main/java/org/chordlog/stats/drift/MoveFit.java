package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.math.Blocks.Block;

/**
 * Least squares over stretches, each with a level of its own: how much a creep that begins
 * somewhere and goes on through all of them explains, straight on or until it ends (Hudson 1966,
 * Journal of the American Statistical Association 61, 1097-1129), and how much one step within the
 * newest stretch does.
 */
final class MoveFit {
  /** Places that a creep may begin at, and lengths that it may have from each. */
  private static final int PLACES = 40;

  private static final int LENGTHS = 4;

  /** Fewest blocks of a creep. */
  private static final int LEAST = 8;

  /** Fewest blocks on either side of the step. */
  private static final int LEAST_BESIDE = 5;

  /** Shortest creep that ended, in pieces, and as a part of the pieces since it began. */
  private static final double SHORTEST = 20;

  private static final double SHORTEST_PART = 0.4;

  /**
   * Residual variances that a creep's later beginning must take away (Akaike), more where that
   * leaves earlier stretches out, and its end.
   */
  private static final double WORTH = 2;

  private static final double WORTH_LEFT_OUT = 5;
  private static final double END_WORTH = 3;

  /*
   * Residual variances by which a step must explain more than the creep, set by simulation: beyond
   * the first it is a jump, up to the second still a creep, the commoner of the two.
   */
  private static final double CLEARLY = 5.5;
  private static final double LEANING = 3.5;

  private final List<Stretch> stretches;
  private final Stretch newest;
  private final List<Block> all;
  private final Block first;
  private Block begin;
  private double later;
  private Block step;
  private double creepExplains;
  private double stepExplains;
  private double stepHeight;
  private double variance = 1;

  /** At least one stretch, the newest last with at least one block. */
  MoveFit(List<Stretch> stretches, Stretch newest) {
    this.stretches = stretches;
    this.newest = newest;
    all = stretches.stream().flatMap(each -> each.blocks().stream()).toList();
    first = all.get(0);
    begin = first;
    step = newest.blocks().get(0);
    fitStep();
    fitCreep();
  }

  private void fitCreep() {
    double last = all.get(all.size() - 1).at();
    double fromFirst = explained(first.at(), last);
    Block best = begin;
    Block bestEnded = begin;
    double most = fromFirst;
    double mostEnded = 0;
    for (int i = 0; i <= PLACES; i++) {
      int at = (int) ((all.size() - 1L) * i / PLACES);
      if (all.size() - at < LEAST) {
        break;
      }
      double explains = explained(all.get(at).at(), last);
      best = explains > most ? all.get(at) : best;
      most = Math.max(most, explains);
      double ended = ended(all.get(at).at(), last);
      bestEnded = ended > mostEnded ? all.get(at) : bestEnded;
      mostEnded = Math.max(mostEnded, ended);
    }
    variance = (squares() - Math.max(most, stepExplains)) / Math.max(1, freedom(all.size()));
    creepExplains = Math.max(most, mostEnded - END_WORTH * variance);
    begin = creepExplains > most ? bestEnded : best;
    later = (creepExplains - fromFirst) / variance;
  }

  /** Most that a creep explains that begins there and has ended. */
  private double ended(double from, double last) {
    double shortest = Math.max(SHORTEST, SHORTEST_PART * (last - from));
    double most = 0;
    for (int i = 0; i < LENGTHS && from + shortest < last; i++) {
      double length = shortest + (last - from - shortest) * i / LENGTHS;
      most = Math.max(most, explained(from, from + length));
    }
    return most;
  }

  private double freedom(int blocks) {
    return blocks - stretches.size() - 2.0;
  }

  private double squares() {
    return stretches.stream().mapToDouble(each -> Sum.of(each.blocks(), 0, 0).yy()).sum();
  }

  private double explained(double from, double to) {
    double xy = 0;
    double xx = 0;
    for (Stretch each : stretches) {
      Sum sum = Sum.of(each.blocks(), from, to);
      xy += sum.xy();
      xx += sum.xx();
    }
    return xx > 0 ? xy * xy / xx : 0;
  }

  private void fitStep() {
    List<Block> blocks = newest.blocks();
    double all = 0;
    double weight = 0;
    for (Block each : blocks) {
      all += each.count() * each.mean();
      weight += each.count();
    }
    double before = 0;
    double part = 0;
    for (int i = 0; i + LEAST_BESIDE < blocks.size(); i++) {
      before += blocks.get(i).count() * blocks.get(i).mean();
      part += blocks.get(i).count();
      double height = (all - before) / (weight - part) - before / part;
      double explains = height * height * part * (weight - part) / weight;
      if (i + 1 >= LEAST_BESIDE && explains > stepExplains) {
        stepExplains = explains;
        stepHeight = height;
        step = blocks.get(i + 1);
      }
    }
  }

  DriftFinding.Kind kind() {
    double better = (stepExplains - creepExplains) / variance;
    if (better > CLEARLY) {
      return DriftFinding.Kind.JUMP;
    }
    return better > LEANING ? DriftFinding.Kind.MOVE : DriftFinding.Kind.CREEP;
  }

  /** Where the creep begins: at the first piece unless a later one is clearly better. */
  Block begin() {
    double worth = stretches.size() == 1 ? WORTH : WORTH_LEFT_OUT;
    return later > worth ? begin : first;
  }

  /** The first block after the step. */
  Block step() {
    return step;
  }

  double stepHeight() {
    return stepHeight;
  }

  /** Weighted sums about the means of one stretch; x counts from a piece on up to another. */
  private record Sum(double xx, double xy, double yy) {
    static Sum of(List<Block> blocks, double from, double to) {
      double weight = 0;
      double meanX = 0;
      double meanY = 0;
      for (Block each : blocks) {
        weight += each.count();
        meanX += each.count() * (Math.max(from, Math.min(to, each.at())) - from);
        meanY += each.count() * each.mean();
      }
      meanX /= weight;
      meanY /= weight;
      double xx = 0;
      double xy = 0;
      double yy = 0;
      for (Block each : blocks) {
        double x = Math.max(from, Math.min(to, each.at())) - from - meanX;
        double y = each.mean() - meanY;
        xx += each.count() * x * x;
        xy += each.count() * x * y;
        yy += each.count() * y * y;
      }
      return new Sum(xx, xy, yy);
    }
  }
}
