package org.chordlog.chart;

import java.awt.Stroke;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Capital;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jspecify.annotations.Nullable;

/** The capability picture: classes, fitted curves, specification limits, target and mean. */
final class DistributionPicture {
  private static final double TOP_MARGIN_PX = 44;
  private static final double HEADROOM = 1.12;

  /** A curve fitted to few values may have a peak that would press the classes flat. */
  private static final double CURVES_MOST = 3;

  private final DistributionSnapshot values;
  private final ValueScale scale;
  private final List<SideLabels.Label> labels = new ArrayList<>();
  private final List<Legend.Entry> legend = new ArrayList<>();
  private final XYPlot plot = new XYPlot();
  private double most = 1;
  private double highest = 1;

  private DistributionPicture(DistributionSnapshot values) {
    this.values = values;
    List<Double> seen = new ArrayList<>();
    values.bins().forEach(bin -> seen.addAll(List.of(bin.low(), bin.high())));
    ValueScale.add(seen, values.lowerSpecificationLimit());
    ValueScale.add(seen, values.upperSpecificationLimit());
    ValueScale.add(seen, values.target());
    scale = ValueScale.of(seen);
  }

  static Drawing of(DistributionSnapshot values) {
    DistributionPicture picture = new DistributionPicture(values);
    NumberAxis axis =
        ChartStyle.valueAxis(Capital.of(values.quantity()) + ", " + values.unit(), picture.scale);
    Layout layout = new Layout(TOP_MARGIN_PX, ChartStyle.BOTTOM_MARGIN_PX, 24);
    return Drawing.of(axis, List.of(picture.panel()), picture.description(), layout);
  }

  private Panel panel() {
    ChartStyle.style(plot);
    Layers layers = new Layers(plot);
    layers.bars(Bars.of(values, false), Ink.BAR);
    layers.bars(Bars.of(values, true), Ink.SIGNAL);
    values.bins().forEach(bin -> most = Math.max(most, (double) bin.count()));
    highest = most;
    for (int i = 0; i < values.curves().size(); i++) {
      boolean last = i == values.curves().size() - 1;
      curve(
          layers,
          values.curves().get(i),
          i == 0 ? Ink.POINT : Ink.SOFT,
          i == 0 ? ChartStyle.BOLD : last ? ChartStyle.DASHED : ChartStyle.DOTTED);
    }
    mark("LSL", values.lowerSpecificationLimit(), Ink.SPECIFICATION);
    mark("USL", values.upperSpecificationLimit(), Ink.SPECIFICATION);
    mark("Target", values.target(), Ink.SOFT);
    mark("Mean", values.mean(), Ink.CENTRE);
    plot.setRangeAxis(ChartStyle.countAxis("Count", 0, highest * HEADROOM));
    return new Panel(
        plot, Bars.targets(values), List.of(new TopLabels(labels), new Legend(legend)));
  }

  private void curve(Layers layers, DistributionSnapshot.Curve curve, Ink ink, Stroke stroke) {
    XyData data = new XyData(curve.densities().size());
    for (DistributionSnapshot.Density at : curve.densities()) {
      if (scale.shows(at.value())) {
        double height = at.density() * Bars.countPerDensity(values);
        data.add(at.value(), height);
        highest = Math.max(highest, Math.min(height, CURVES_MOST * most));
      }
    }
    layers.line(data.dataset(), ink, stroke);
    legend.add(Legend.Entry.line(ink, stroke, curve.name()));
  }

  private void mark(String name, @Nullable Double value, Ink ink) {
    if (value != null) {
      boolean limit = ink == Ink.SPECIFICATION;
      plot.addDomainMarker(
          new ValueMarker(value, ink.color(), limit ? ChartStyle.DASH_DOT : ChartStyle.SOLID),
          Layer.FOREGROUND);
      labels.add(
          new SideLabels.Label(
              value, name + " " + ChartWords.number(value, scale.decimals()), ink));
    }
  }

  private String description() {
    return "Distribution of %s, %s values; %s outside the specification limits by class."
        .formatted(values.quantity(), values.count(), Bars.outside(values));
  }
}
