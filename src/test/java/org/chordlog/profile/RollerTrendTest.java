package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whether the ripple of a roller grows from piece to piece. */
final class RollerTrendTest {
  /** 1 + 4√(0.2/1.8); of exponential values 0.21 % are beyond it (by 2 million draws elsewhere). */
  @Test
  void theLimitOfTheChartAndItsAlarms() {
    assertEquals(2.33333333, RollerDrift.limit(), 1e-8);
    Random random = new Random(8);
    RollerDrift drift = new RollerDrift();
    int count = 400_000;
    int beyond = 0;
    for (int i = 0; i < count; i++) {
      double evidence = -Math.log(1 - random.nextDouble());
      drift.add(List.of(new RipplePoint("r", evidence, 0, 0)));
      beyond += i % 10 == 0 && drift.trends().get(0).beyond() ? 10 : 0;
    }
    assertEquals(0.0020965, (double) beyond / count, 0.0006);
  }

  @Test
  void aRisingRippleIsBeyondItsLimitAndSaysSinceWhen() {
    RollerDrift drift = new RollerDrift();
    for (int i = 0; i < 20; i++) {
      drift.add(List.of(new RipplePoint("entry", 1, 0.0001, 0.0004)));
    }
    assertEquals(0, drift.trends().get(0).beyondFor());
    for (int i = 0; i < 14; i++) {
      drift.add(List.of(new RipplePoint("entry", 9, 0.09, 0.0004)));
    }
    RollerTrend trend = drift.trends().get(0);
    assertEquals(34, trend.pieces());
    assertEquals(14, trend.beyondFor());
    assertEquals(0.29, trend.amplitudePercent(), 0.02);
    assertEquals(0.02 / 3, trend.uncertaintyPercent(), 0.001);
    assertEquals(34, trend.newest().size());
  }
}
