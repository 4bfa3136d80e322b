package org.chordlog.chart;

import java.awt.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.ui.Layer;
import org.jspecify.annotations.Nullable;

/** One control chart as a panel: band, limits, line, points, excluded points, signals, events. */
final class ControlPanel {
  private static final int THIN_LINE_ABOVE = 150;

  private final ChartSnapshot chart;
  private final ValueScale scale;
  private final List<Run> runs;

  private ControlPanel(ChartSnapshot chart, @Nullable DistributionSnapshot edge) {
    this.chart = chart;
    this.scale = ValueScale.of(chart, edge == null ? List.of() : ends(edge));
    this.runs = Run.of(chart.points());
  }

  /** With its labels so far away; {@code edge}, where it is not null, is drawn between. */
  static Panel of(ChartSnapshot chart, double labelsAwayPx, @Nullable DistributionSnapshot edge) {
    ControlPanel panel = new ControlPanel(chart, edge);
    List<Overlay> overlays = new ArrayList<>();
    if (edge != null) {
      overlays.add(new EdgeBars(edge));
    }
    overlays.add(new SideLabels(panel.labels(), labelsAwayPx));
    PointLines.of(chart).forEach(trace -> overlays.add(new PointSigns(trace)));
    if (chart.kind() != ChartKind.CUSUM) {
      overlays.add(new NewestSign(chart.points()));
    }
    overlays.add(new RunWords(panel.runs));
    return new Panel(panel.plot(), PointTargets.of(chart, panel.scale.decimals()), overlays);
  }

  private static List<Double> ends(DistributionSnapshot edge) {
    return edge.bins().stream()
        .filter(bin -> bin.count() > 0)
        .flatMap(bin -> Stream.of(bin.low(), bin.high()))
        .toList();
  }

  /** The limits, and the newest value. */
  private List<SideLabels.Label> labels() {
    List<SideLabels.Label> labels = new ArrayList<>(LimitLabels.of(chart, scale));
    if (chart.kind() != ChartKind.CUSUM) {
      NewestSign.newest(chart.points())
          .map(p -> new SideLabels.Label(p.value(), newest(p), Ink.POINT))
          .ifPresent(labels::add);
    }
    return labels;
  }

  private String newest(ChartPoint point) {
    return "Last " + ChartWords.number(point.value(), scale.decimals());
  }

  private XYPlot plot() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    String label = ChartWords.of(chart.kind(), chart.quantity()) + ", " + chart.unit();
    plot.setRangeAxis(ChartStyle.valueAxis(label, scale));
    Layers layers = new Layers(plot);
    limits(layers);
    points(layers);
    runs(plot);
    band(plot);
    specification(plot);
    events(plot);
    return plot;
  }

  private void limits(Layers layers) {
    layers.line(steps(LimitSpan::upper).dataset(), Ink.LIMIT, ChartStyle.DASHED);
    layers.line(steps(LimitSpan::lower).dataset(), Ink.LIMIT, ChartStyle.DASHED);
    layers.line(steps(LimitSpan::centre).dataset(), Ink.CENTRE, ChartStyle.SOLID);
  }

  private XyData steps(Function<LimitSpan, @Nullable Double> value) {
    XyData data = new XyData(3 * chart.limits().size());
    for (LimitSpan span : chart.limits()) {
      Double at = value.apply(span);
      if (at != null) {
        data.add(span.fromNumber() - 0.5, at).add(span.toNumber() + 0.5, at).gap();
      }
    }
    return data;
  }

  private void points(Layers layers) {
    Stroke stroke = chart.points().size() > THIN_LINE_ABOVE ? ChartStyle.HAIR : ChartStyle.SOLID;
    for (List<ChartPoint> trace : PointLines.of(chart)) {
      layers.line(XyData.of(trace, p -> !p.excluded()), Ink.LINE, stroke);
    }
  }

  private void band(XYPlot plot) {
    XYItemRenderer under = plot.getRenderer(0);
    for (LimitSpan span : chart.limits()) {
      Double lower = span.lower();
      Double upper = span.upper();
      if (lower != null && upper != null) {
        under.addAnnotation(
            new XYBoxAnnotation(
                span.fromNumber() - 0.5,
                lower,
                span.toNumber() + 0.5,
                upper,
                null,
                null,
                Ink.BAND.tint()),
            Layer.BACKGROUND);
      }
    }
  }

  private void runs(XYPlot plot) {
    for (Run.Stretch stretch : Run.stretches(runs)) {
      plot.getRenderer(0)
          .addAnnotation(
              new XYBoxAnnotation(
                  stretch.from() - 0.5,
                  scale.low(),
                  stretch.to() + 0.5,
                  scale.high(),
                  null,
                  null,
                  Ink.SIGNAL.tint()),
              Layer.BACKGROUND);
    }
  }

  private void specification(XYPlot plot) {
    for (Double limit :
        ValueScale.present(chart.lowerSpecificationLimit(), chart.upperSpecificationLimit())) {
      plot.addRangeMarker(
          new ValueMarker(limit, Ink.SPECIFICATION.color(), ChartStyle.DASH_DOT), Layer.BACKGROUND);
    }
  }

  private void events(XYPlot plot) {
    for (ChartSnapshot.EventMark mark : chart.events()) {
      plot.addDomainMarker(
          new ValueMarker(mark.beforeNumber() - 0.5, Ink.EVENT.color(), ChartStyle.DOTTED),
          Layer.BACKGROUND);
    }
  }
}
