package org.chordlog.stats.control;

import java.util.List;
import org.chordlog.measure.Check;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;

/** What the statistics of a job are to be: quantity, unit, limits, positions, subgroups, charts. */
public record StatisticsPlan(
    String quantity,
    String unit,
    Limits limits,
    List<String> positions,
    SubgroupRule subgroups,
    ChartSettings charts) {
  /** Name of the characteristic whose subgroups run over the positions of a piece. */
  public static final String WHOLE_PIECE = "whole piece";

  public StatisticsPlan {
    Check.text("quantity", quantity);
    positions = List.copyOf(positions);
  }

  /** The radius of a job, mm, with the usual charts. */
  public static StatisticsPlan ofRadius(Specification specification, Plan plan) {
    return new StatisticsPlan(
        "radius",
        "mm",
        Limits.of(specification),
        plan.positions(),
        plan.subgroups(),
        ChartSettings.usual());
  }

  /** The same plan with other settings of its charts. */
  public StatisticsPlan withCharts(ChartSettings changed) {
    return new StatisticsPlan(quantity, unit, limits, positions, subgroups, changed);
  }

  /** The same plan with other positions. */
  public StatisticsPlan withPositions(List<String> changed) {
    return new StatisticsPlan(quantity, unit, limits, changed, subgroups, charts);
  }

  /** The plan as text: equal for equal plans, different for different ones, in every process. */
  public String text() {
    return PlanText.of(this);
  }

  public boolean subgrouped() {
    return subgroups.kind() != SubgroupRule.Kind.INDIVIDUAL;
  }

  /** Where EWMA and CUSUM start from. */
  double aim(Estimate estimate) {
    Double target = limits.target();
    return charts.aimAtTarget() && target != null ? target : estimate.mean();
  }

  /** The same plan with other subgroups. */
  public StatisticsPlan withSubgroups(SubgroupRule rule) {
    return new StatisticsPlan(quantity, unit, limits, positions, rule, charts);
  }
}
