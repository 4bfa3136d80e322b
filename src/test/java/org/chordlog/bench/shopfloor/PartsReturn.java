package org.chordlog.bench.shopfloor;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.chordlog.bench.shopfloor.Advised.Known;
import org.chordlog.bench.shopfloor.Study.Figure;
import org.chordlog.correction.Advice;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.Aim;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.StartSetting;
import org.chordlog.correction.Told;
import org.chordlog.correction.Tuning;
import org.chordlog.simulator.DemoBend;
import org.jspecify.annotations.Nullable;

/**
 * A machine that bends jobs of a few parts from a few lots, which come again. Everything else is as
 * in the demo's shop; tolerances are ± 6.67 permil of each radius. Without a number to set, an
 * operator sets up with an error of 0.2 mm; with one, the rollers are off it by {@code resetMm}
 * (zero of the scale, tools).
 */
public final class PartsReturn {
  /** What is remembered from job to job. */
  public enum Memory {
    /** Each job begins as on an unknown machine. */
    NOTHING,
    /** The gain, but no part, no lot and no number on the scale at the set-up. */
    GAIN,
    /** All of it, and the operator sets the number that he is told. */
    ALL
  }

  private static final double[] RADII_MM = {1800, 1500, 2400, 1200};
  private static final double GUESS_MM = 0.2;
  private static final double LOT_MPA = 8;

  private final Memory memory;
  private final int pieces;
  private final double resetMm;
  private final RandomGenerator random;
  private final Shop shop = Shop.demo();
  private final List<Double> lots = new ArrayList<>();
  private @Nullable Corrector corrector;

  private PartsReturn(Memory memory, int pieces, double resetMm, int lotCount, long seed) {
    this.memory = memory;
    this.pieces = pieces;
    this.resetMm = resetMm;
    random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    for (int i = 0; i < lotCount; i++) {
      lots.add(DemoBend.YIELD_MPA + LOT_MPA * random.nextGaussian());
    }
  }

  /** Mean squares of a job in permil², of its first piece, and count of corrections. */
  private record JobLoss(
      double all, double first, double optimum, double corrections, double bad) {}

  /** Over the optimum; {@code first}: what the first piece alone contributes. */
  public record Loss(Figure all, Figure first, Figure corrections, Figure badPercent) {}

  /**
   * Jobs after the first {@code learning} ones of each machine; standard errors from the machines.
   */
  public static Loss run(
      Memory memory, int machines, int jobs, int learning, int pieces, double resetMm, int lots) {
    double[] all = new double[machines];
    double[] first = new double[machines];
    double[] corrections = new double[machines];
    double[] bad = new double[machines];
    for (int m = 0; m < machines; m++) {
      PartsReturn machine = new PartsReturn(memory, pieces, resetMm, lots, 7_000_000L + m);
      double optimum = 0;
      for (int job = 0; job < jobs; job++) {
        JobLoss loss = machine.job(job);
        if (job >= learning) {
          optimum += loss.optimum();
          all[m] += loss.all();
          first[m] += loss.first();
          corrections[m] += loss.corrections() / (jobs - learning);
          bad[m] += 100 * loss.bad() / (jobs - learning);
        }
      }
      all[m] /= optimum;
      first[m] /= optimum;
    }
    return new Loss(Figure.of(all), Figure.of(first), Figure.of(corrections), Figure.of(bad));
  }

  /** All random numbers of a job are drawn at its begin, so that they do not depend on memory. */
  private JobLoss job(int number) {
    double radius = RADII_MM[random.nextInt(RADII_MM.length)];
    int lot = random.nextInt(lots.size());
    double guess = GUESS_MM * random.nextGaussian();
    double reset = resetMm * random.nextGaussian();
    Draws draws = new Draws(shop, random.nextLong());
    double ideal = DemoBend.settingMm(radius);
    Aim aim = Aim.symmetric(radius, radius * Shop.TOLERANCE / 1000);
    Corrector machine = begin(number, aim, radius, lot);
    StartSetting start = machine.snapshot().start();
    boolean told = memory == Memory.ALL && start != null;
    double set = told ? start.setting() : ideal + guess;
    machine.tell(new Told.SetUp(memory == Memory.ALL ? (Double) set : null));
    return new JobOnMachine(machine, draws, aim, lots.get(lot), told ? reset : 0).bend(set, ideal);
  }

  private Corrector begin(int number, Aim aim, double radius, int lot) {
    Corrector machine = memory == Memory.NOTHING ? null : corrector;
    if (machine == null) {
      machine = new Corrector(Known.usual().scale(shop), Tuning.usual());
    }
    corrector = machine;
    boolean all = memory == Memory.ALL;
    machine.tell(
        new Told.JobStart(
            number,
            aim,
            all ? "part " + radius : "",
            all ? "tube" : "",
            all ? "lot " + lot : "",
            pieces));
    return machine;
  }

  /** One job, from its set-up on. */
  private final class JobOnMachine {
    private final Corrector machine;
    private final Draws draws;
    private final Aim aim;
    private final double yield;
    private final double reset;

    JobOnMachine(Corrector machine, Draws draws, Aim aim, double yield, double reset) {
      this.machine = machine;
      this.draws = draws;
      this.aim = aim;
      this.yield = yield;
      this.reset = reset;
    }

    JobLoss bend(double set, double ideal) {
      double number = set;
      double error = reset;
      double squares = 0;
      double first = 0;
      double optimum = 0;
      double corrections = 0;
      double bad = 0;
      for (int i = 0; i < pieces; i++) {
        double off = permil(i, number + error + draws.creep[i], yield);
        squares += off * off;
        first = i == 0 ? off * off : first;
        bad += Math.abs(off) > Shop.TOLERANCE ? 1 : 0;
        double best = permil(i, ideal, DemoBend.YIELD_MPA);
        optimum += best * best;
        double amount = measured(i, off);
        if (amount != 0) {
          corrections++;
          machine.tell(Told.Correction.between(number, number + amount));
          number += amount;
          error += draws.move[i];
        }
      }
      return new JobLoss(squares, first, optimum, corrections, bad / pieces);
    }

    private double permil(int i, double setting, double yieldMpa) {
      double perMm =
          DemoBend.unloadedPerMm(setting + draws.setting[i], yieldMpa + draws.ofPiece[i]);
      return 1000 * ((1 + draws.along[i]) / perMm / aim.targetMm() - 1);
    }

    private double measured(int i, double off) {
      double read = aim.targetMm() * (1 + off / 1000) + draws.reading[i];
      machine.tell(
          new Told.Piece(i + 1, List.of(PieceReading.radius(read, shop.pieces().reading()))));
      Advice advice = machine.advice();
      return advice instanceof Correct correct ? correct.move().amount() : 0;
    }
  }
}
