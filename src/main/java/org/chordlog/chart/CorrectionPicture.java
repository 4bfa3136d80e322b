package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.correction.TrailPoint;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/**
 * Corrections of a machine: above, the pieces, the level with its band of two standard
 * uncertainties, and the deadband within which it is left alone; below, what one unit of the scale
 * does, as far as it is known. Along: pieces, 1 for the oldest.
 */
final class CorrectionPicture {
  private static final int LEAST_WIDTH = 10;
  private static final Legend LEGEND =
      new Legend(
          List.of(
              Legend.Entry.of(Sign.dot(4), "piece"),
              Legend.Entry.line(Ink.CENTRE, ChartStyle.BOLD, "level ± 2u")));
  private final CorrectionTrail trail;
  private final List<CorrectionPlace> places;
  private final CorrectionLabels labels;

  private CorrectionPicture(CorrectionTrail trail) {
    this.trail = trail;
    places = CorrectionPlace.of(trail.points());
    labels = new CorrectionLabels(trail);
  }

  static Drawing of(CorrectionTrail trail) {
    CorrectionPicture picture = new CorrectionPicture(trail);
    List<Panel> panels = new ArrayList<>(List.of(picture.levels()));
    if (picture.places.stream().anyMatch(CorrectionPlace::gainKnown)) {
      panels.add(picture.gains());
    }
    int last = panels.size() - 1;
    panels.set(last, panels.get(last).with(LEGEND));
    long pieces = picture.places.stream().filter(CorrectionPlace::piece).count();
    return Drawing.of(
        ChartStyle.countAxis("Newest pieces", 0, Math.max(pieces, LEAST_WIDTH) + 1.0),
        panels,
        picture.described(pieces),
        Layout.USUAL);
  }

  private long corrections() {
    return events().stream()
        .filter(each -> each.point().kind() == TrailPoint.Kind.CORRECTION)
        .count();
  }

  private String described(long pieces) {
    CorrectionPlace last = places.get(places.size() - 1);
    return "Corrections of %s, %s, %s; level now %s %% of curvature, ± %s."
        .formatted(
            trail.machine(),
            ChartWords.counted(pieces, "piece"),
            ChartWords.counted(corrections(), "correction"),
            ChartWords.number(last.level(), 2),
            ChartWords.number(2 * last.uncertainty(), 2));
  }

  private List<CorrectionPlace> pieces() {
    return places.stream().filter(CorrectionPlace::piece).toList();
  }

  /** Of a set-up and what was told with it, the first alone. */
  private List<CorrectionPlace> events() {
    return places.stream().filter(each -> !each.piece()).toList();
  }

  private Panel levels() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    double deadband = places.get(places.size() - 1).deadband();
    List<Double> values = new ArrayList<>(List.of(deadband, -deadband));
    pieces().forEach(each -> values.addAll(List.of(each.level(), each.reading())));
    ValueScale scale = ValueScale.of(values);
    plot.setRangeAxis(ChartStyle.valueAxis("Tighter, % of curvature", scale));
    XyData line = new XyData(2 * places.size());
    pieces().forEach(each -> line.add(each.along(), each.level()));
    new Layers(plot).line(line.dataset(), Ink.CENTRE, ChartStyle.BOLD);
    Band.fill(plot, pieces().stream().map(CorrectionPicture::ofLevel).toList(), scale);
    for (double side : new double[] {deadband, -deadband}) {
      plot.addRangeMarker(
          new ValueMarker(side, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    }
    eventLines(plot);
    return new Panel(plot, targets(scale), overlays(deadband, scale));
  }

  private static Band ofLevel(CorrectionPlace each) {
    return new Band(
        each.along(), each.level() - 2 * each.uncertainty(), each.level() + 2 * each.uncertainty());
  }

  private static Band ofGain(CorrectionPlace each) {
    return new Band(
        each.along(),
        each.gain() - 2 * each.gainUncertainty(),
        each.gain() + 2 * each.gainUncertainty());
  }

  private void eventLines(XYPlot plot) {
    for (CorrectionPlace each : events()) {
      plot.addDomainMarker(
          new ValueMarker(each.along(), Ink.EVENT.color(), ChartStyle.DOTTED), Layer.BACKGROUND);
    }
  }

  private List<Overlay> overlays(double deadband, ValueScale scale) {
    int decimals = scale.decimals();
    return List.of(
        new EventStrip(Sign.flag(5), false, flags()),
        new Dots(
            pieces().stream().map(each -> new Dots.Dot(each.along(), each.reading())).toList()),
        new SideLabels(
            List.of(
                new SideLabels.Label(
                    deadband, "leave " + ChartWords.number(deadband, decimals), Ink.LIMIT),
                new SideLabels.Label(
                    -deadband, "leave " + ChartWords.number(-deadband, decimals), Ink.LIMIT))));
  }

  private List<EventStrip.Flag> flags() {
    List<EventStrip.Flag> flags = new ArrayList<>();
    for (CorrectionPlace each : events()) {
      flags.add(new EventStrip.Flag(each.along(), CorrectionLabels.shortly(each.point())));
    }
    return flags;
  }

  private List<Target> targets(ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    for (CorrectionPlace each : places) {
      double value = each.piece() ? each.reading() : scale.high();
      targets.add(new Target(each.along(), value, labels.of(each, scale)));
    }
    return targets;
  }

  private Panel gains() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    List<CorrectionPlace> known = places.stream().filter(CorrectionPlace::gainKnown).toList();
    List<Double> values = new ArrayList<>();
    List<Band> bands = known.stream().map(CorrectionPicture::ofGain).toList();
    bands.forEach(each -> values.addAll(List.of(each.low(), each.high())));
    ValueScale scale = ValueScale.of(values);
    plot.setRangeAxis(ChartStyle.valueAxis("One unit does, %", scale));
    XyData line = new XyData(known.size());
    known.forEach(each -> line.add(each.along(), each.gain()));
    new Layers(plot).line(line.dataset(), Ink.CENTRE, ChartStyle.BOLD);
    Band.fill(plot, bands, scale);
    eventLines(plot);
    return new Panel(plot, gainTargets(known, scale), List.of());
  }

  private List<Target> gainTargets(List<CorrectionPlace> known, ValueScale scale) {
    return known.stream()
        .filter(each -> !each.piece())
        .map(
            each ->
                new Target(
                    each.along(),
                    each.gain(),
                    "One unit does %s ± %s %% of curvature"
                        .formatted(
                            ChartWords.number(each.gain(), scale.decimals()),
                            ChartWords.number(2 * each.gainUncertainty(), scale.decimals()))))
        .toList();
  }
}
