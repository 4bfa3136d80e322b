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
  private final String unit;
  private final String spot;
  private final @Nullable CellSpread spread;
  private final @Nullable Double master;
  private final @Nullable MeanLimits limits;

  private StudyReadingsPicture(StudySnapshot study) {
    cells = study.cells();
    unit = study.unit();
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
      panels.add(spreads(spread));
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
    XYPlot plot = plot("Radius", scale);
    List<Double> means = cells.stream().map(Cell::mean).toList();
    new Layers(plot).line(trace(means).dataset(), Ink.LINE, ChartStyle.SOLID);
    plot.addRangeMarker(
        new ValueMarker(overall(), Ink.CENTRE.color(), ChartStyle.HAIR), Layer.BACKGROUND);
    List<Overlay> overlays =
        new ArrayList<>(
            List.of(new EventStrip(Sign.post(5), false, operators()), new Dots(dots())));
    if (limits == null) {
      overlays.add(new SideLabels(List.of(label("mean", overall(), Ink.CENTRE, scale))));
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
    labels.add(label("UCL", of.upper(), Ink.LIMIT, scale));
    labels.add(label("mean", of.centre(), Ink.CENTRE, scale));
    labels.add(label("LCL", of.lower(), Ink.LIMIT, scale));
    if (master != null) {
      plot.addRangeMarker(
          new ValueMarker(master, Ink.SPECIFICATION.color(), ChartStyle.SOLID), Layer.BACKGROUND);
      String beyond = scale.shows(master) ? "" : master > scale.high() ? " (above)" : " (below)";
      String told = "master " + Words.number(master, scale.decimals(master)) + beyond;
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

  private XYPlot plot(String quantity, ValueScale scale) {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis(quantity + ", " + unit, scale));
    for (EventStrip.Flag each : operators()) {
      plot.addDomainMarker(
          new ValueMarker(each.along(), Ink.SOFT.color(), ChartStyle.DOTTED), Layer.BACKGROUND);
    }
    return plot;
  }

  private double overall() {
    return cells.stream().mapToDouble(Cell::mean).average().orElseThrow();
  }

  /** Where each operator's cells begin. */
  private List<EventStrip.Flag> operators() {
    List<EventStrip.Flag> flags = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      if (begins(i)) {
        flags.add(new EventStrip.Flag(i - 0.5, cells.get(i).operator()));
      }
    }
    return flags;
  }

  private boolean begins(int cell) {
    return cell == 0 || !cells.get(cell).operator().equals(cells.get(cell - 1).operator());
  }

  /** A line for each operator. */
  private XyData trace(List<Double> values) {
    XyData line = new XyData(2 * cells.size());
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0 && begins(i)) {
        line.gap();
      }
      line.add(i, values.get(i));
    }
    return line;
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
              .map(each -> Words.number(each, scale.decimals()))
              .collect(Collectors.joining(", "));
      String label =
          "%s: mean %s %s of %s"
              .formatted(name(i), Words.number(mean, scale.decimals()), unit, values);
      boolean beyond = limits != null && limits.beyond(cells.get(i));
      targets.add(new Target(i, mean, beyond ? label + ", beyond its limits" : label));
    }
    return targets;
  }

  private String name(int cell) {
    return cells.get(cell).operator() + ", " + cells.get(cell).spot();
  }

  private Panel spreads(CellSpread of) {
    List<Double> shown = new ArrayList<>(of.values());
    shown.addAll(List.of(of.lower(), of.upper()));
    ValueScale scale = ValueScale.of(shown);
    XYPlot plot = plot(Words.capital(of.word()), scale);
    new Layers(plot).line(trace(of.values()).dataset(), Ink.LINE, ChartStyle.SOLID);
    for (double limit : new double[] {of.lower(), of.upper()}) {
      if (limit > 0) {
        plot.addRangeMarker(
            new ValueMarker(limit, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
      }
    }
    plot.addRangeMarker(
        new ValueMarker(of.centre(), Ink.CENTRE.color(), ChartStyle.HAIR), Layer.BACKGROUND);
    return new Panel(plot, targets(of, scale), overlays(of, scale));
  }

  private List<Overlay> overlays(CellSpread of, ValueScale scale) {
    List<Dots.Dot> dots =
        IntStream.range(0, cells.size())
            .mapToObj(i -> new Dots.Dot(i, of.values().get(i)))
            .toList();
    List<Dots.Dot> above = dots.stream().filter(each -> of.above((int) each.along())).toList();
    List<SideLabels.Label> labels = new ArrayList<>();
    labels.add(label("UCL", of.upper(), Ink.LIMIT, scale));
    labels.add(label("CL", of.centre(), Ink.CENTRE, scale));
    if (of.lower() > 0) {
      labels.add(label("LCL", of.lower(), Ink.LIMIT, scale));
    }
    List<Overlay> overlays = new ArrayList<>(List.of(new Dots(dots), new SideLabels(labels)));
    overlays.add(new Dots(above, Sign.diamond(7)));
    boolean signs = !above.isEmpty() || (limits != null && !beyond(limits).isEmpty());
    overlays.add(new Legend(legend(signs)));
    return overlays;
  }

  private List<Legend.Entry> legend(boolean signs) {
    Legend.Entry mean = Legend.Entry.line(Ink.LINE, ChartStyle.SOLID, "means");
    return signs
        ? List.of(
            mean,
            Legend.Entry.of(
                Sign.diamond(6), limits == null ? "above its limit" : "beyond its limit"))
        : List.of(mean, Legend.Entry.of(Sign.dot(4), "readings"));
  }

  private static SideLabels.Label label(String name, double at, Ink ink, ValueScale scale) {
    return new SideLabels.Label(at, name + " " + Words.number(at, scale.decimals()), ink);
  }

  private List<Target> targets(CellSpread of, ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    String limits =
        "limits %s to %s %s"
            .formatted(
                Words.number(of.lower(), scale.decimals()),
                Words.number(of.upper(), scale.decimals()),
                unit);
    for (int i = 0; i < cells.size(); i++) {
      double value = of.values().get(i);
      String label =
          "%s: %s %s %s".formatted(name(i), of.word(), Words.number(value, scale.decimals()), unit);
      targets.add(
          new Target(i, value, of.above(i) ? label + ", above its limit" : label, limits, null));
    }
    return targets;
  }
}
