package org.chordlog.bench.shopfloor;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.chordlog.bench.shopfloor.Shop.Change;
import org.chordlog.simulator.DemoBend;

/** Everything that chance decides in one job, drawn before any policy acts. */
final class Draws {
  private static final double CREEP_FROM = 41;
  private static final double CREEP_PIECES = 30;
  private static final double STRAY_MM = 20;
  private static final int SCATTER_JOBS = 2_000;

  final double setUp;
  final boolean[] newLot = new boolean[Shop.PIECES];
  final int[] lot = new int[Shop.PIECES];
  final double[] yield = new double[Shop.PIECES];
  final double[] creep = new double[Shop.PIECES];
  final double[] setting = new double[Shop.PIECES];
  final double[] ofPiece = new double[Shop.PIECES];
  final double[] along = new double[Shop.PIECES];
  final double[] reading = new double[Shop.PIECES];
  final double[] move = new double[Shop.PIECES];
  final boolean[] recorded = new boolean[Shop.PIECES];
  final boolean[] ignored = new boolean[Shop.PIECES];
  final double[] thumb = new double[Shop.PIECES];

  Draws(Shop shop, long seed) {
    RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    setUp = shop.levels().setUp() * random.nextGaussian();
    lots(shop.lots(), random);
    creep(shop.levels(), random);
    for (int i = 0; i < Shop.PIECES; i++) {
      setting[i] = shop.pieces().setting() * random.nextGaussian();
      ofPiece[i] = shop.pieces().yield() * random.nextGaussian();
      along[i] = shop.pieces().along() * random.nextGaussian();
      double stray = random.nextDouble() < 0.5 ? -STRAY_MM : STRAY_MM;
      double reads = shop.pieces().reading() * random.nextGaussian();
      reading[i] = random.nextDouble() < shop.records().strays() ? reads + stray : reads;
      move[i] = shop.scale().move() * random.nextGaussian();
      recorded[i] = random.nextDouble() < shop.records().corrections();
      ignored[i] = random.nextDouble() < shop.records().ignored();
      thumb[i] = random.nextGaussian();
    }
  }

  private void lots(Shop.Lots lots, RandomGenerator random) {
    int once = 100 + random.nextInt(41);
    double[] drawn = new double[Shop.PIECES];
    for (int i = 0; i < Shop.PIECES; i++) {
      drawn[i] = DemoBend.YIELD_MPA + lots.yieldSd() * random.nextGaussian();
      boolean often = random.nextDouble() < 1 / 40.0;
      newLot[i] = i > 0 && changes(lots.change(), i, once, often);
      lot[i] = lot(lots.change(), i);
      yield[i] = drawn[lot[i]];
    }
  }

  private static boolean changes(Change change, int piece, int once, boolean often) {
    return switch (change) {
      case NEVER -> false;
      case ONCE -> piece == once;
      case OFTEN -> often;
      case TAKING_TURNS, THREE_IN_TURN -> piece % 40 == 0;
    };
  }

  private int lot(Change change, int piece) {
    int before = piece == 0 ? 0 : lot[piece - 1];
    int next = newLot[piece] ? before + 1 : before;
    return switch (change) {
      case TAKING_TURNS -> next % 2;
      case THREE_IN_TURN -> next % 3;
      case NEVER, ONCE, OFTEN -> next;
    };
  }

  private void creep(Shop.Levels levels, RandomGenerator random) {
    double amount = levels.creep() + levels.creepSd() * random.nextGaussian();
    double sign = levels.eitherSign() && random.nextBoolean() ? -1 : 1;
    double walk = 0;
    for (int i = 0; i < Shop.PIECES; i++) {
      double since = Math.max(0, i + 1 - CREEP_FROM);
      walk += levels.wander() * random.nextGaussian();
      creep[i] = sign * amount * (1 - Math.exp(-since / CREEP_PIECES)) + walk;
    }
  }

  /** Radius of a piece less the target, with the rollers at a setting. */
  double deviationMm(int piece, double settingMm, double yieldMpa) {
    double perMm = DemoBend.unloadedPerMm(settingMm + setting[piece], yieldMpa + ofPiece[piece]);
    return (1 / perMm) * (1 + along[piece]) - DemoBend.TARGET_MM;
  }

  /** Mean square of the pieces with the level exactly on target: nobody can do better. */
  double optimum() {
    double sum = 0;
    for (int i = 0; i < Shop.PIECES; i++) {
      double off = deviationMm(i, Shop.SETTING, DemoBend.YIELD_MPA);
      sum += off * off;
    }
    return sum / Shop.PIECES;
  }

  static double scatterMm() {
    double sum = 0;
    for (int job = 0; job < SCATTER_JOBS; job++) {
      sum += new Draws(Shop.demo(), 99_000_000L + job).optimum();
    }
    return Math.sqrt(sum / SCATTER_JOBS);
  }
}
