package org.chordlog.stats.control;

import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A plan as one line of text, by which a checkpoint is known to fit. The names in it are part of
 * every checkpoint in use: another text for the same plan makes all of them void, and the
 * statistics are computed again from the readings.
 */
final class PlanText {
  private PlanText() {}

  static String of(StatisticsPlan plan) {
    return "StatisticsPlan[quantity="
        + plan.quantity()
        + (", unit=" + plan.unit())
        + (", limits=" + of(plan.limits()))
        + (", positions=" + positions(plan))
        + (", subgroups=SubgroupRule[kind=" + plan.subgroups().kind().name())
        + (", size=" + plan.subgroups().size() + "]")
        + (", charts=" + of(plan.charts()) + "]");
  }

  private static String of(Limits limits) {
    return "Limits[lower=%s, upper=%s, target=%s]"
        .formatted(limits.lower(), limits.upper(), limits.target());
  }

  /** A comma within a name is marked, so that one name with it differs from two without. */
  private static String positions(StatisticsPlan plan) {
    return plan.positions().stream()
        .map(name -> name.replace("\\", "\\\\").replace(",", "\\,"))
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static String of(ChartSettings charts) {
    return "ChartSettings[runRules=RunRules[counts="
        + of(charts.runRules())
        + ("], baselinePoints=" + charts.baselinePoints())
        + (", spread=" + charts.spread().name())
        + (", ewma=" + of(charts.ewma()))
        + (", cusum=" + of(charts.cusum()))
        + (", aimAtTarget=" + charts.aimAtTarget())
        + (", standard=" + of(charts.standard()) + "]");
  }

  private static String of(RunRules rules) {
    return rules.counts().entrySet().stream()
        .map(each -> each.getKey().name() + "=" + each.getValue())
        .collect(Collectors.joining(", ", "{", "}"));
  }

  private static String of(ChartSettings.Ewma ewma) {
    return "Ewma[lambda=%s, width=%s, asymptotic=%s]"
        .formatted(ewma.lambda(), ewma.width(), ewma.asymptotic());
  }

  private static String of(ChartSettings.Cusum cusum) {
    return "Cusum[reference=%s, decisionInterval=%s, headStart=%s]"
        .formatted(cusum.reference(), cusum.decisionInterval(), cusum.headStart());
  }

  private static String of(ChartSettings.@Nullable Standard standard) {
    return standard == null
        ? "null"
        : "Standard[mean=%s, standardDeviation=%s]"
            .formatted(standard.mean(), standard.standardDeviation());
  }
}
