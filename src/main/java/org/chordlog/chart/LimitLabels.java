package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.LimitSpan;
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
    made.add("USL", chart.upperSpecificationLimit(), Ink.SPECIFICATION);
    made.add("LSL", chart.lowerSpecificationLimit(), Ink.SPECIFICATION);
    return made.labels;
  }

  private void add(String name, @Nullable Double value, Ink ink) {
    if (value != null) {
      String beyond = scale.shows(value) ? "" : value > scale.high() ? " ↑" : " ↓";
      String text = name + " " + Words.number(value, scale.decimals()) + beyond;
      labels.add(new SideLabels.Label(value, text, ink));
    }
  }
}
