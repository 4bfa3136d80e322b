package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.control.Subgrouper;

/** Puts the figures and cautions of one scope together. */
public final class Summarising {
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final ControlVerdict control;
  private final Subgrouper.Waiting waiting;

  public Summarising(
      StatisticsPlan plan, Evidence evidence, ControlVerdict control, Subgrouper.Waiting waiting) {
    this.plan = plan;
    this.evidence = evidence;
    this.control = control;
    this.waiting = waiting;
  }

  /** All figures with their cautions, under that name. */
  public Summary summary(String name, Scope scope) {
    List<Figure> figures = new ArrayList<>();
    figures.addAll(new DescriptiveFigures(plan, evidence).figures());
    figures.addAll(new CapabilityFigures(plan, evidence).figures());
    figures.addAll(new NonconformingFigures(plan, evidence).figures());
    figures.addAll(new DistributionFigures(plan, evidence.shape()).figures());
    figures.addAll(new GaugeFigures(plan, evidence).figures());
    List<Caution> cautions = new Cautions(plan, evidence, control, waiting).all();
    return new Summary(name, scope, evidence.values().n(), figures, cautions);
  }
}
