package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.bench.shopfloor.Advised.Known;
import org.chordlog.bench.shopfloor.PartsReturn;
import org.chordlog.bench.shopfloor.PartsReturn.Memory;
import org.chordlog.bench.shopfloor.Policies;
import org.chordlog.bench.shopfloor.Shop;
import org.chordlog.bench.shopfloor.Study;
import org.chordlog.bench.shopfloor.Study.Figure;
import org.chordlog.bench.shopfloor.Study.Outcome;
import org.junit.jupiter.api.Test;

/**
 * What advice is worth in invented shops, in short: 100 jobs of 200 pieces on fixed seeds, where
 * the bars leave at least two standard errors. {@code CorrectionBars} has all of it.
 */
final class BarsTest {
  private static final int JOBS = 100;
  private static final long SEED = 31;

  private static Study study(Shop shop) {
    return new Study(shop, JOBS, SEED);
  }

  private static void most(double bar, Figure figure) {
    assertTrue(figure.mean() <= bar, () -> figure + " is above " + bar);
  }

  @Test
  void demoAgainstOtherPolicies() {
    Study demo = study(Shop.demo());
    Outcome advised = demo.advised();
    most(1.52, advised.loss());
    most(9, advised.corrections());
    most(1.05, advised.lossOver(demo.run(shop -> Policies.allKnown(shop, 1.25))));
    most(0.45, advised.badOver(demo.run(shop -> Policies.chasing())));
    most(0.30, advised.badOver(demo.run(Policies::shewhart)));
    assertTrue(advised.judgement().insidePercent() >= 95.45);
    assertTrue(
        Math.abs(advised.judgement().keptPercent() - advised.judgement().statedPercent()) < 8);
  }

  @Test
  void nothingEverChanges() {
    Outcome steady = study(Shop.steady()).advised();
    most(1.07, steady.loss());
    most(2.5, steady.corrections());
  }

  @Test
  void unknownScaleAndWrongGain() {
    Outcome reversed = study(Shop.reversed()).advised(Known.usual().withoutGain(0.4));
    assertTrue(reversed.judgement().signRightPercent() == 100);
    most(1.62, reversed.loss());
    Study demo = study(Shop.demo());
    most(1.65, demo.advised(Known.usual().withGain(0.5, 0.5)).loss());
    most(1.65, demo.advised(Known.usual().withGain(2, 0.5)).loss());
  }

  @Test
  void lotsThatReturn() {
    Study study = study(Shop.returning());
    Outcome with = study.advised();
    most(0.96, with.lossOver(study.advised(Known.usual().withoutLotNames())));
    most(1.06, with.firstGoodAfterLot());
  }

  /** Short jobs of parts that return: the first piece costs a third at most. */
  @Test
  void partsThatReturn() {
    PartsReturn.Loss without = PartsReturn.run(Memory.NOTHING, 10, 15, 8, 40, 0.03, 4);
    PartsReturn.Loss with = PartsReturn.run(Memory.ALL, 10, 15, 8, 40, 0.03, 4);
    most(without.first().mean() / 3, with.first());
    most(without.all().mean() * 0.8, with.all());
  }
}
