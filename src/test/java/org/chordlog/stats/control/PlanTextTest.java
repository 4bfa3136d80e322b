package org.chordlog.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.junit.jupiter.api.Test;

/** The text by which checkpoints in use are known: another one makes all of them void. */
final class PlanTextTest {
  private static final SubgroupRule BY_PIECE = new SubgroupRule(SubgroupRule.Kind.PIECE, 2);
  private static final StatisticsPlan USUAL =
      StatisticsPlan.ofRadius(
          new Specification(Face.OUTER, 1800, 1788.0, null),
          new Plan(List.of("start", "end"), BY_PIECE));

  @Test
  void theTextOfTheUsualPlan() {
    assertEquals(
        "StatisticsPlan[quantity=radius, unit=mm, limits=Limits[lower=1788.0, upper=null,"
            + " target=1800.0], positions=[start, end], subgroups=SubgroupRule[kind=PIECE, size=2],"
            + " charts=ChartSettings[runRules=RunRules[counts={BEYOND_LIMIT=1, SAME_SIDE=9,"
            + " NEAR_LIMIT=2, OFF_CENTRE=4}], baselinePoints=25, spread=RANGE,"
            + " ewma=Ewma[lambda=0.2, width=2.962, asymptotic=false], cusum=Cusum[reference=0.5,"
            + " decisionInterval=5.0, headStart=0.5], aimAtTarget=false, standard=null]]",
        USUAL.text());
  }

  @Test
  void theTextWithAStandard() {
    ChartSettings known = ChartSettings.usual().withStandard(new ChartSettings.Standard(1800, 2.5));
    String text = USUAL.withCharts(known).text();
    assertEquals(
        "standard=Standard[mean=1800.0, standardDeviation=2.5]]]",
        text.substring(text.indexOf("standard=")));
  }

  /** One plan for each thing that can differ. */
  @Test
  void plansThatDifferHaveTextsThatDiffer() {
    ChartSettings charts = USUAL.charts();
    List<StatisticsPlan> plans =
        List.of(
            USUAL,
            new StatisticsPlan("depth", "mm", USUAL.limits(), USUAL.positions(), BY_PIECE, charts),
            new StatisticsPlan("radius", "in", USUAL.limits(), USUAL.positions(), BY_PIECE, charts),
            new StatisticsPlan("radius", "mm", Limits.NONE, USUAL.positions(), BY_PIECE, charts),
            USUAL.withPositions(List.of("end", "start")),
            USUAL.withPositions(List.of("start, end")),
            USUAL.withPositions(List.of("start\\, end")),
            USUAL.withSubgroups(new SubgroupRule(SubgroupRule.Kind.PIECE, 3)),
            USUAL.withSubgroups(new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 2)),
            USUAL.withCharts(charts.withRunRules(RunRules.nelson())),
            USUAL.withCharts(charts.withBaselinePoints(30)),
            USUAL.withCharts(charts.withSpread(Spread.STANDARD_DEVIATION)),
            USUAL.withCharts(charts.withEwma(new ChartSettings.Ewma(0.3, 2.962, false))),
            USUAL.withCharts(charts.withEwma(new ChartSettings.Ewma(0.2, 3, false))),
            USUAL.withCharts(charts.withEwma(new ChartSettings.Ewma(0.2, 2.962, true))),
            USUAL.withCharts(charts.withCusum(new ChartSettings.Cusum(0.6, 5, 0.5))),
            USUAL.withCharts(charts.withCusum(new ChartSettings.Cusum(0.5, 4, 0.5))),
            USUAL.withCharts(charts.withCusum(new ChartSettings.Cusum(0.5, 5, 0))),
            USUAL.withCharts(charts.withAimAtTarget(true)),
            USUAL.withCharts(charts.withStandard(new ChartSettings.Standard(1800, 2.5))));
    assertEquals(plans.size(), plans.stream().map(StatisticsPlan::text).distinct().count());
  }
}
