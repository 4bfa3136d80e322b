package org.chordlog.stats;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Cp, Cpk and their kin from sigma within, Pp, Ppk and their kin from sigma overall. */
final class CapabilityFigures {
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final List<Figure> figures = new ArrayList<>();

  CapabilityFigures(StatisticsPlan plan, Evidence evidence) {
    this.plan = plan;
    this.evidence = evidence;
  }

  List<Figure> figures() {
    Moments values = evidence.values();
    if (values.n() < 2 || (plan.limits().lower() == null && plan.limits().upper() == null)) {
      return figures;
    }
    Estimate within = evidence.within();
    if (within != null) {
      indices("Cp", "CPL", "CPU", "Cpk", within, Figures.withinMethod(plan));
    }
    Estimate overall = new Estimate(values.mean(), values.deviation(), values.n() - 1.0);
    indices("Pp", "PPL", "PPU", "Ppk", overall, "overall standard deviation");
    return figures;
  }

  private void indices(
      String both, String low, String high, String least, Estimate sigma, String method) {
    if (!(sigma.sigma() > 0)) {
      return;
    }
    Capability capability = new Capability(plan.limits(), sigma, evidence.values().n());
    add(both, capability.potential(), "(USL - LSL)/6σ, " + method + "; interval by chi-square");
    add(low, capability.lowerSide(), "(mean - LSL)/3σ, " + method + Capability.BISSELL);
    add(high, capability.upperSide(), "(USL - mean)/3σ, " + method + Capability.BISSELL);
    add(least, capability.nearer(), "the smaller of " + low + " and " + high + Capability.BISSELL);
  }

  private void add(String name, @Nullable Interval index, String method) {
    if (index != null) {
      figures.add(
          Figures.ranged(
              name, index.value(), index.lower(), index.upper(), "", method, Capability.SOURCE));
    }
  }
}
