package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Capital;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/**
 * The ripple of each roller from piece to piece: an exponentially weighted moving average of the
 * evidence of it, which is 1 on average without a ripple, with the limit above which it warns. One
 * panel a roller.
 */
final class RipplePicture {
  private static final int LEAST_WIDTH = 10;

  private RipplePicture() {}

  static Optional<Drawing> of(LineSnapshot line) {
    List<LineSnapshot.Ripple> ripples =
        line.ripples().stream().filter(each -> !each.evidence().isEmpty()).toList();
    if (ripples.isEmpty()) {
      return Optional.empty();
    }
    int most = ripples.stream().mapToInt(each -> each.evidence().size()).max().orElseThrow();
    return Optional.of(
        Drawing.of(
            ChartStyle.countAxis("Newest pieces", 0, Math.max(most, LEAST_WIDTH) + 1.0),
            ripples.stream().map(RipplePicture::panel).toList(),
            described(ripples, most),
            Layout.USUAL));
  }

  private static Panel panel(LineSnapshot.Ripple ripple) {
    List<Double> values = new ArrayList<>(ripple.evidence());
    values.addAll(List.of(0.0, ripple.limit()));
    ValueScale scale = ValueScale.of(values);
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis(Capital.of(ripple.roller()), scale));
    XyData line = new XyData(ripple.evidence().size());
    for (int i = 0; i < ripple.evidence().size(); i++) {
      line.add(i + 1.0, ripple.evidence().get(i));
    }
    new Layers(plot).line(line.dataset(), Ink.CENTRE, ChartStyle.BOLD);
    plot.addRangeMarker(
        new ValueMarker(ripple.limit(), Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    return new Panel(plot, targets(ripple), List.of(above(ripple), label(ripple)));
  }

  private static Dots above(LineSnapshot.Ripple ripple) {
    List<Dots.Dot> dots = new ArrayList<>();
    for (int i = 0; i < ripple.evidence().size(); i++) {
      if (ripple.evidence().get(i) > ripple.limit()) {
        dots.add(new Dots.Dot(i + 1.0, ripple.evidence().get(i)));
      }
    }
    return new Dots(dots, Sign.diamond(5));
  }

  private static SideLabels label(LineSnapshot.Ripple ripple) {
    String limit = "limit " + ChartWords.number(ripple.limit(), 2);
    return new SideLabels(List.of(new SideLabels.Label(ripple.limit(), limit, Ink.LIMIT)));
  }

  private static List<Target> targets(LineSnapshot.Ripple ripple) {
    List<Target> targets = new ArrayList<>();
    int size = ripple.evidence().size();
    for (int i = 0; i < size; i++) {
      double value = ripple.evidence().get(i);
      targets.add(
          new Target(
              i + 1.0,
              value,
              "%s, %s: %s%s"
                  .formatted(
                      Capital.of(ripple.roller()),
                      i == size - 1 ? "newest piece" : "%s pieces ago".formatted(size - 1 - i),
                      ChartWords.number(value, 2),
                      value > ripple.limit() ? ", above its limit" : "")));
    }
    return targets;
  }

  private static String described(List<LineSnapshot.Ripple> ripples, int pieces) {
    StringBuilder text =
        new StringBuilder("Ripple of each roller over %s pieces".formatted(pieces));
    for (LineSnapshot.Ripple each : ripples) {
      double last = each.evidence().get(each.evidence().size() - 1);
      text.append(
          "; %s: %s %% of curvature, %s its limit"
              .formatted(
                  each.roller(),
                  ChartWords.number(each.amplitudePercent(), 2),
                  last > each.limit() ? "above" : "within"));
    }
    return text.append('.').toString();
  }
}
