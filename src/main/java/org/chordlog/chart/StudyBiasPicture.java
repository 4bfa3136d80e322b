package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.chart.StudySnapshot.Bias;
import org.chordlog.chart.StudySnapshot.Fit;
import org.chordlog.chart.StudySnapshot.Point;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/**
 * Readings less the master's value, with the fitted bias, its 95 % band and the line of no bias.
 */
final class StudyBiasPicture {
  /** Room left and right of the masters' depths, as a share of them. */
  private static final double ROOM = 0.05;

  private final Bias bias;
  private final String unit;
  private final ValueScale scale;

  private StudyBiasPicture(Bias bias, String unit) {
    this.bias = bias;
    this.unit = unit;
    List<Double> values = new ArrayList<>(List.of(0.0));
    bias.points().forEach(each -> values.add(each.bias()));
    bias.fits().forEach(each -> values.addAll(List.of(each.lower(), each.upper())));
    scale = ValueScale.of(values);
  }

  /** Empty for a study on pieces. */
  static Optional<Drawing> of(StudySnapshot study) {
    return Optional.ofNullable(study.bias())
        .map(each -> new StudyBiasPicture(each, study.unit()).drawing());
  }

  private Drawing drawing() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(
        ChartStyle.valueAxis(
            (bias.overDepth() ? "Bias of depth, " : "Bias of radius, ") + unit, scale));
    XyData line = new XyData(bias.fits().size());
    bias.fits().forEach(each -> line.add(each.along(), each.bias()));
    new Layers(plot).line(line.dataset(), Ink.CENTRE, ChartStyle.BOLD);
    Band.fill(
        plot,
        bias.fits().stream()
            .map(each -> new Band(each.along(), each.lower(), each.upper()))
            .toList(),
        scale);
    plot.addRangeMarker(new ValueMarker(0, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    Panel panel = new Panel(plot, targets(), overlays());
    return Drawing.of(axis(), List.of(panel), description(), Layout.USUAL);
  }

  private List<Overlay> overlays() {
    return List.of(
        new Dots(
            bias.points().stream().map(each -> new Dots.Dot(each.along(), each.bias())).toList()),
        new SideLabels(List.of(new SideLabels.Label(0, "no bias", Ink.LIMIT))),
        new Legend(
            List.of(
                Legend.Entry.of(Sign.dot(4), "reading"),
                Legend.Entry.line(Ink.CENTRE, ChartStyle.BOLD, "bias, 95 % band"))));
  }

  private NumberAxis axis() {
    double first = bias.points().stream().mapToDouble(Point::along).min().orElse(0);
    double last = bias.points().stream().mapToDouble(Point::along).max().orElse(1);
    if (!bias.overDepth()) {
      return ChartStyle.countAxis("Measurement", first - 0.5, last + 0.5);
    }
    double room = ROOM * (last - first);
    return ChartStyle.axis("Depth of the master, " + unit, first - room, last + room);
  }

  private List<Target> targets() {
    return bias.points().stream()
        .map(
            each ->
                new Target(
                    each.along(),
                    each.bias(),
                    "%s: %s %s".formatted(each.master(), number(each.bias()), unit)))
        .toList();
  }

  private String number(double value) {
    return ChartWords.number(value, scale.decimals());
  }

  private String description() {
    int last = bias.fits().size() - 1;
    List<Fit> ends =
        bias.overDepth()
            ? List.of(bias.fits().get(0), bias.fits().get(last))
            : bias.fits().subList(0, 1);
    String told =
        ends.stream()
            .map(
                each ->
                    "%s %s, 95 %% band %s to %s"
                        .formatted(
                            number(each.bias()), unit, number(each.lower()), number(each.upper())))
            .collect(Collectors.joining("; at the deepest "));
    return "Bias on masters, %s readings; fitted bias%s %s."
        .formatted(bias.points().size(), bias.overDepth() ? " at the least depth" : "", told);
  }
}
