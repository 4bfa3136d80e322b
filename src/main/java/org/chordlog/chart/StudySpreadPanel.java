package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.measure.Capital;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/**
 * How far the repeats of each cell are apart, with the limits for all of them. The legend is that
 * of both panels: whether the means have limits, and whether one is beyond them.
 */
record StudySpreadPanel(
    StudyCells cells, CellSpread spread, boolean limitedMeans, boolean meanBeyond) {
  Panel panel() {
    List<Double> shown = new ArrayList<>(spread.values());
    shown.addAll(List.of(spread.lower(), spread.upper()));
    ValueScale scale = ValueScale.of(shown);
    XYPlot plot = cells.plot(Capital.of(spread.word()), scale);
    new Layers(plot).line(cells.trace(spread.values()).dataset(), Ink.LINE, ChartStyle.SOLID);
    for (double limit : new double[] {spread.lower(), spread.upper()}) {
      if (limit > 0) {
        plot.addRangeMarker(
            new ValueMarker(limit, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
      }
    }
    plot.addRangeMarker(
        new ValueMarker(spread.centre(), Ink.CENTRE.color(), ChartStyle.HAIR), Layer.BACKGROUND);
    return new Panel(plot, targets(scale), overlays(scale));
  }

  private List<Overlay> overlays(ValueScale scale) {
    List<Dots.Dot> dots =
        IntStream.range(0, cells.cells().size())
            .mapToObj(i -> new Dots.Dot(i, spread.values().get(i)))
            .toList();
    List<Dots.Dot> above = dots.stream().filter(each -> spread.above((int) each.along())).toList();
    List<SideLabels.Label> labels = new ArrayList<>();
    labels.add(StudyCells.label("UCL", spread.upper(), Ink.LIMIT, scale));
    labels.add(StudyCells.label("CL", spread.centre(), Ink.CENTRE, scale));
    if (spread.lower() > 0) {
      labels.add(StudyCells.label("LCL", spread.lower(), Ink.LIMIT, scale));
    }
    List<Overlay> overlays = new ArrayList<>(List.of(new Dots(dots), new SideLabels(labels)));
    overlays.add(new Dots(above, Sign.diamond(7)));
    overlays.add(new Legend(legend(!above.isEmpty() || meanBeyond)));
    return overlays;
  }

  private List<Legend.Entry> legend(boolean signs) {
    Legend.Entry mean = Legend.Entry.line(Ink.LINE, ChartStyle.SOLID, "means");
    return signs
        ? List.of(
            mean,
            Legend.Entry.of(Sign.diamond(6), limitedMeans ? "beyond its limit" : "above its limit"))
        : List.of(mean, Legend.Entry.of(Sign.dot(4), "readings"));
  }

  private List<Target> targets(ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    String limits =
        "limits %s to %s %s"
            .formatted(
                ChartWords.number(spread.lower(), scale.decimals()),
                ChartWords.number(spread.upper(), scale.decimals()),
                cells.unit());
    for (int i = 0; i < cells.cells().size(); i++) {
      double value = spread.values().get(i);
      String label =
          "%s: %s %s %s"
              .formatted(
                  cells.name(i),
                  spread.word(),
                  ChartWords.number(value, scale.decimals()),
                  cells.unit());
      targets.add(
          new Target(
              i, value, spread.above(i) ? label + ", above its limit" : label, limits, null));
    }
    return targets;
  }
}
