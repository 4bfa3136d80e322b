package org.chordlog.bench.shopfloor;

import org.chordlog.simulator.DemoBend;

/** One policy through one job. */
final class JobRun {
  private final Shop shop;
  private final Draws draws;
  private final Policy policy;
  private final JobResult result = new JobResult();

  /** Of the rollers, mm from where the target was expected. */
  private double moved;

  /** What the scale says, its own unit. */
  private double number;

  private double way;

  private JobRun(Shop shop, Draws draws, Policy policy) {
    this.shop = shop;
    this.draws = draws;
    this.policy = policy;
  }

  static JobResult of(Shop shop, Draws draws, Policy policy) {
    JobRun run = new JobRun(shop, draws, policy);
    for (int i = 0; i < Shop.PIECES; i++) {
      run.piece(i);
    }
    return run.result;
  }

  private void piece(int i) {
    if (draws.newLot[i] && shop.records().lots()) {
      move(i, policy.lot(draws.lot[i]), true);
    }
    double off = draws.deviationMm(i, setting(i), draws.yield[i]);
    double before = level(i);
    double read = DemoBend.TARGET_MM + off + draws.reading[i];
    double amount = policy.measured(new Policy.Seen(i, read, before, draws.thumb[i]));
    move(i, amount, draws.recorded[i]);
    policy.outcome(before, level(i));
    result.piece(i, off, draws.newLot[i]);
  }

  private double setting(int i) {
    return Shop.SETTING + draws.setUp + draws.creep[i] + moved;
  }

  private double level(int i) {
    double perMm = DemoBend.unloadedPerMm(setting(i), draws.yield[i]);
    return 1000 * (perMm * DemoBend.TARGET_MM - 1);
  }

  private void move(int i, double amount, boolean recorded) {
    if (amount == 0 || draws.ignored[i]) {
      return;
    }
    result.corrected(i);
    double error = policy.exact() ? 0 : draws.move[i];
    moved += withLostMotion(amount * shop.scale().unitMm() + error);
    policy.moved(number, amount, recorded);
    number += amount;
  }

  private double withLostMotion(double mm) {
    double now = Math.signum(mm);
    boolean reversed = way != 0 && now != way;
    way = now;
    return reversed ? now * Math.max(Math.abs(mm) - shop.scale().lostMotion(), 0) : mm;
  }
}
