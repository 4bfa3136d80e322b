package org.chordlog.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.chart.StudySnapshot.Component;
import org.jfree.chart.plot.XYPlot;

/** Standard deviations that the scatter is made of, side by side, each with its interval. */
final class StudyComponentsPicture {
  /** An upper end beyond so many times the largest figure would flatten the rest. */
  private static final double MOST_SHOWN = 2.5;

  private final StudySnapshot study;
  private final ValueScale scale;

  private StudyComponentsPicture(StudySnapshot study) {
    this.study = study;
    double most = study.components().stream().mapToDouble(Component::value).max().orElse(1);
    List<Double> shown = new ArrayList<>(List.of(0.0, most));
    for (Component each : study.components()) {
      Double upper = each.upper();
      shown.add(Math.min(upper == null ? most : upper, MOST_SHOWN * most));
    }
    ValueScale wide = ValueScale.of(shown);
    scale = new ValueScale(0, wide.high());
  }

  /** Empty where nothing is compared. */
  static Optional<Drawing> of(StudySnapshot study) {
    return study.components().isEmpty()
        ? Optional.empty()
        : Optional.of(new StudyComponentsPicture(study).drawing());
  }

  private Drawing drawing() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis("Std. deviation, " + study.unit(), scale));
    // gridlines are drawn only where there is a renderer
    new Layers(plot).line(new XyData(0).dataset(), Ink.POINT, ChartStyle.HAIR);
    List<Overlay> overlays = List.of(new Signs(study.components()), new Legend(Signs.legend()));
    return Drawing.of(
        axis(), List.of(new Panel(plot, targets(), overlays)), description(), Layout.USUAL);
  }

  private NameAxis axis() {
    return new NameAxis("Component", study.components().stream().map(Component::symbol).toList());
  }

  private List<Target> targets() {
    List<Target> targets = new ArrayList<>();
    for (int i = 0; i < study.components().size(); i++) {
      Component each = study.components().get(i);
      targets.add(new Target(i, each.value(), told(each)));
    }
    return targets;
  }

  private String told(Component each) {
    Double lower = each.lower();
    Double upper = each.upper();
    int decimals = decimals(each.value());
    String symbol = each.words().contains(each.symbol()) ? "" : each.symbol() + ", ";
    return "%s%s: %s %s, 95 %% interval %s to %s"
        .formatted(
            symbol,
            each.words(),
            ChartWords.number(each.value(), decimals),
            study.unit(),
            lower == null ? "open" : ChartWords.number(lower, decimals),
            upper == null ? "open" : ChartWords.number(upper, decimals));
  }

  /** Three significant digits: one component may be a hundredth of another. */
  private int decimals(double value) {
    return value > 0
        ? (int) Math.max(0, Math.min(9, 2 - Math.floor(Math.log10(value))))
        : scale.decimals();
  }

  private String description() {
    return study.components().stream()
        .map(this::told)
        .collect(Collectors.joining("; ", "Where the scatter comes from. ", "."));
  }

  /** A thick line for the interval, a dot for the figure, an arrow where the end is not shown. */
  private record Signs(List<Component> components) implements Overlay {
    private static final Stroke THICK =
        new BasicStroke(20, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);

    static List<Legend.Entry> legend() {
      return List.of(
          Legend.Entry.of(Sign.dot(5), "figure"),
          Legend.Entry.line(Ink.BAR, THICK, "95 % interval"),
          Legend.Entry.of(Sign.arrowUp(6), "goes on"));
    }

    @Override
    public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
      for (int i = 0; i < components.size(); i++) {
        draw(pen, components.get(i), panel.x(i, dataArea), panel, dataArea);
      }
    }

    private static void draw(
        Graphics2D pen, Component each, double x, Panel panel, Rectangle2D area) {
      Double lower = each.lower();
      Double upper = each.upper();
      double foot = panel.yInside(lower == null ? 0 : lower, area);
      double top = upper == null ? area.getMinY() : panel.yInside(upper, area);
      pen.setPaint(Ink.BAR.color());
      pen.setStroke(THICK);
      pen.draw(new Line2D.Double(x, foot, x, top));
      if (top <= area.getMinY()) {
        sign(pen, Sign.arrowUp(6), x, top + 8);
      }
      sign(pen, Sign.dot(5), x, panel.yInside(each.value(), area));
    }

    private static void sign(Graphics2D pen, Sign sign, double x, double y) {
      sign.hold(pen);
      sign.draw(pen, x, y);
    }
  }
}
