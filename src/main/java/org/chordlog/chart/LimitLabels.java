package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.drift.DriftSnapshot;
import org.jspecify.annotations.Nullable;

/** The labels beside a control chart: the newest limits, and the specification limits. */
final class LimitLabels {
  private final List<SideLabels.Label> labels = new ArrayList<>();
  private final ValueScale scale;

  private LimitLabels(ValueScale scale) {
    this.scale = scale;
  }

  static List<SideLabels.Label> of(ChartSnapshot chart, ValueScale scale) {
    LimitLabels made = new LimitLabels(scale);
    if (!chart.limits().isEmpty()) {
      LimitSpan newest = chart.limits().get(chart.limits().size() - 1);
      made.add("UCL", newest.upper(), Ink.LIMIT);
      made.add("CL", newest.centre(), Ink.CENTRE);
      made.add("LCL", newest.lower(), Ink.LIMIT);
    }
    made.specification(chart.lowerSpecificationLimit(), chart.upperSpecificationLimit());
    return made.labels;
  }

  static List<SideLabels.Label> of(PositionsSnapshot positions, ValueScale scale) {
    LimitLabels made = new LimitLabels(scale);
    made.specification(positions.lowerSpecificationLimit(), positions.upperSpecificationLimit());
    return made.labels;
  }

  static List<SideLabels.Label> of(DriftSnapshot drift, ValueScale scale) {
    LimitLabels made = new LimitLabels(scale);
    made.add("limit", drift.upperLimit(), Ink.LIMIT);
    made.add("limit", drift.lowerLimit(), Ink.LIMIT);
    return made.labels;
  }

  private void specification(@Nullable Double lower, @Nullable Double upper) {
    add("USL", upper, Ink.SPECIFICATION);
    add("LSL", lower, Ink.SPECIFICATION);
  }

  private void add(String name, @Nullable Double value, Ink ink) {
    if (value != null) {
      String beyond = scale.shows(value) ? "" : value > scale.high() ? " (above)" : " (below)";
      String text = name + " " + ChartWords.number(value, scale.decimals(value)) + beyond;
      labels.add(new SideLabels.Label(value, text, ink));
    }
  }
}
