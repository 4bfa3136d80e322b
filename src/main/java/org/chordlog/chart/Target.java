package org.chordlog.chart;

import org.chordlog.stats.control.ChartPoint;
import org.jspecify.annotations.Nullable;

/** Something on a panel that can be pointed at: where on its axes, and what to say of it. */
record Target(double along, double value, String label, String limits, @Nullable ChartPoint point) {
  Target(double along, double value, String label) {
    this(along, value, label, "", null);
  }
}
