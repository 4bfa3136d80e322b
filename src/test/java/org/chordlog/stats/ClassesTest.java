package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Classes;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.capability.Evidence;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.StatisticsPlan;
import org.junit.jupiter.api.Test;

final class ClassesTest {
  private static final StatisticsPlan PLAN =
      new StatisticsPlan(
          "radius",
          "mm",
          Limits.NONE,
          List.of("middle"),
          new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1),
          ChartSettings.usual());

  @Test
  void everyValueIsInOneClassAndTheCurveHoldsAllOfTheArea() {
    DistributionSnapshot made = of(new double[] {3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9});
    assertEquals(15, made.bins().stream().mapToLong(DistributionSnapshot.Bin::count).sum());
    for (int i = 1; i < made.bins().size(); i++) {
      assertEquals(made.bins().get(i - 1).high(), made.bins().get(i).low(), 1e-9);
    }
    List<DistributionSnapshot.Density> curve = made.curves().get(0).densities();
    double step = curve.get(1).value() - curve.get(0).value();
    assertEquals(
        1, curve.stream().mapToDouble(d -> d.density() * step).sum(), 1e-3, made.toString());
  }

  @Test
  void standsWithoutValuesWithOneAndWithEqualOnes() {
    assertTrue(of(new double[0]).bins().isEmpty());
    assertEquals(1, of(new double[] {1800}).bins().size());
    assertEquals(List.of(), of(new double[] {7, 7, 7}).curves());
  }

  private static DistributionSnapshot of(double[] values) {
    Evidence evidence = new Evidence(PLAN);
    for (int i = 0; i < values.length; i++) {
      evidence.add(new Observation(i + 1L, i + 1, "middle", i, values[i], 0));
    }
    return Classes.of(PLAN, evidence);
  }
}
