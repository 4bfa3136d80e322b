package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.chart.StudySnapshot.Cell;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jspecify.annotations.Nullable;

/**
 * Operator by operator: above, every reading at its piece, place or day with the mean of each;
 * below, where there are repeats, how far they are apart with the limits for all of them. Of a
 * master over days the means have limits too, and the master's own radius is shown.
 */
final class StudyReadingsPicture {
  private final List<Cell> cells;
  private final StudyCells row;
  private final String unit;
  private final String spot;
  private final @Nullable CellSpread spread;
  private final @Nullable Double master;
  private final @Nullable MeanLimits limits;

  private StudyReadingsPicture(StudySnapshot study) {
    cells = study.cells();
    unit = study.unit();
    row = new StudyCells(cells, unit);
    spot = study.spot();
    spread = cells.get(0).values().size() > 1 ? CellSpread.of(cells) : null;
    master = study.master();
    limits = master == null ? null : MeanLimits.of(cells, spread);
  }

  /** Empty for a study on masters. */
  static Optional<Drawing> of(StudySnapshot study) {
    return study.cells().isEmpty()
        ? Optional.empty()
        : Optional.of(new StudyReadingsPicture(study).drawing());
  }

  private Drawing drawing() {
    List<Panel> panels = new ArrayList<>(List.of(readings()));
    if (spread != null) {
      boolean beyond = limits != null && !beyond(limits).isEmpty();
      panels.add(new StudySpreadPanel(row, spread, limits != null, beyond).panel());
    }
    return Drawing.of(
        new NameAxis(spot, cells.stream().map(Cell::spot).toList()),
        panels,
        words().description(scale().decimals()),
        Layout.USUAL);
  }

  private StudyReadingsWords words() {
    return new StudyReadingsWords(cells, unit, spot, spread, master, limits);
  }

  private ValueScale scale() {
    List<Double> shown = new ArrayList<>();
    cells.forEach(each -> shown.addAll(each.values()));
    if (limits != null) {
      shown.addAll(List.of(limits.lower(), limits.upper()));
    }
    return ValueScale.of(shown, ValueScale.present(master));
  }

  private Panel readings() {
    ValueScale scale = scale();
    XYPlot plot = row.plot("Radius", scale);
    List<Double> means = cells.stream().map(Cell::mean).toList();
    new Layers(plot).line(row.trace(means).dataset(), Ink.LINE, ChartStyle.SOLID);
    plot.addRangeMarker(
        new ValueMarker(overall(), Ink.CENTRE.color(), ChartStyle.HAIR), Layer.BACKGROUND);
    List<Overlay> overlays =
        new ArrayList<>(
            List.of(new OperatorNames(row.operators(), cells.size()), new Dots(dots())));
    if (limits == null) {
      overlays.add(new SideLabels(List.of(StudyCells.label("mean", overall(), Ink.CENTRE, scale))));
    } else {
      overDays(limits, plot, scale, overlays);
    }
    return new Panel(plot, targets(scale), overlays);
  }

  /** Limits of the means, the days beyond them, and the master. */
  private void overDays(MeanLimits of, XYPlot plot, ValueScale scale, List<Overlay> overlays) {
    for (double limit : new double[] {of.lower(), of.upper()}) {
      plot.addRangeMarker(
          new ValueMarker(limit, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    }
    List<SideLabels.Label> labels = new ArrayList<>();
    labels.add(StudyCells.label("UCL", of.upper(), Ink.LIMIT, scale));
    labels.add(StudyCells.label("mean", of.centre(), Ink.CENTRE, scale));
    labels.add(StudyCells.label("LCL", of.lower(), Ink.LIMIT, scale));
    if (master != null) {
      plot.addRangeMarker(
          new ValueMarker(master, Ink.SPECIFICATION.color(), ChartStyle.SOLID), Layer.BACKGROUND);
      String beyond = scale.shows(master) ? "" : master > scale.high() ? " (above)" : " (below)";
      String told = "master " + ChartWords.number(master, scale.decimals(master)) + beyond;
      labels.add(new SideLabels.Label(master, told, Ink.SPECIFICATION));
    }
    overlays.add(new SideLabels(labels));
    overlays.add(new Dots(beyond(of), Sign.diamond(7)));
  }

  private List<Dots.Dot> beyond(MeanLimits of) {
    return IntStream.range(0, cells.size())
        .filter(i -> of.beyond(cells.get(i)))
        .mapToObj(i -> new Dots.Dot(i, cells.get(i).mean()))
        .toList();
  }

  private double overall() {
    return cells.stream().mapToDouble(Cell::mean).average().orElseThrow();
  }

  private List<Dots.Dot> dots() {
    List<Dots.Dot> dots = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      for (double value : cells.get(i).values()) {
        dots.add(new Dots.Dot(i, value));
      }
    }
    return dots;
  }

  private List<Target> targets(ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      double mean = cells.get(i).mean();
      String values =
          cells.get(i).values().stream()
              .map(each -> ChartWords.number(each, scale.decimals()))
              .collect(Collectors.joining(", "));
      String label =
          "%s: mean %s %s of %s"
              .formatted(row.name(i), ChartWords.number(mean, scale.decimals()), unit, values);
      boolean beyond = limits != null && limits.beyond(cells.get(i));
      targets.add(new Target(i, mean, beyond ? label + ", beyond its limits" : label));
    }
    return targets;
  }
}
