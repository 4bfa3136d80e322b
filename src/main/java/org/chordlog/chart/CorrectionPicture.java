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
  /** Permil to percent. */
  private static final double PERCENT = 0.1;

  /** A gain known worse than that, relative, would be all band. */
  private static final double WORST_GAIN = 0.75;

  private static final int LEAST_WIDTH = 10;
  private final CorrectionTrail trail;
  private final List<Place> places;

  /** A point of the trail with its place along the picture; events stand between pieces. */
  private record Place(double along, TrailPoint point) {
    boolean piece() {
      return point.kind() == TrailPoint.Kind.PIECE;
    }

    double level() {
      return PERCENT * point.level().estimate();
    }

    double reading() {
      return PERCENT * point.level().reading();
    }

    double uncertainty() {
      return PERCENT * point.level().standardUncertainty();
    }

    /** Change of curvature for one unit, percent of the target's. */
    double gain() {
      return 100 * point.gain().perMmPerUnit() * point.where().targetMm();
    }

    double gainUncertainty() {
      return 100 * point.gain().standardUncertainty() * point.where().targetMm();
    }

    boolean gainKnown() {
      return gainUncertainty() < WORST_GAIN * Math.abs(gain());
    }
  }

  private CorrectionPicture(CorrectionTrail trail) {
    this.trail = trail;
    places = placed(trail.points());
  }

  static Drawing of(CorrectionTrail trail) {
    CorrectionPicture picture = new CorrectionPicture(trail);
    List<Panel> panels = new ArrayList<>(List.of(picture.levels()));
    if (picture.places.stream().anyMatch(Place::gainKnown)) {
      panels.add(picture.gains());
    }
    long pieces = picture.places.stream().filter(Place::piece).count();
    return Drawing.of(
        ChartStyle.countAxis("Newest pieces", 0, Math.max(pieces, LEAST_WIDTH) + 1.0),
        panels,
        picture.described(pieces),
        Layout.USUAL);
  }

  private static List<Place> placed(List<TrailPoint> points) {
    List<Place> places = new ArrayList<>();
    int pieces = 0;
    for (TrailPoint each : points) {
      boolean piece = each.kind() == TrailPoint.Kind.PIECE;
      pieces += piece ? 1 : 0;
      places.add(new Place(piece ? pieces : pieces + 0.5, each));
    }
    return places;
  }

  private String described(long pieces) {
    Place last = places.get(places.size() - 1);
    return "Corrections of %s, %d pieces, %d corrections; level now %s %% of curvature, ± %s."
        .formatted(
            trail.machine(),
            pieces,
            events().stream()
                .filter(each -> each.point().kind() == TrailPoint.Kind.CORRECTION)
                .count(),
            Words.number(last.level(), 2),
            Words.number(2 * last.uncertainty(), 2));
  }

  private List<Place> pieces() {
    return places.stream().filter(Place::piece).toList();
  }

  /** Of a set-up and what was told with it, the first alone. */
  private List<Place> events() {
    return places.stream().filter(each -> !each.piece()).toList();
  }

  private Panel levels() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    double deadband = PERCENT * places.get(places.size() - 1).point().level().deadband();
    List<Double> values = new ArrayList<>(List.of(deadband, -deadband));
    pieces().forEach(each -> values.addAll(List.of(each.level(), each.reading())));
    ValueScale scale = ValueScale.of(values);
    plot.setRangeAxis(ChartStyle.valueAxis("Tighter than target, % of curvature", scale));
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

  private static Band ofLevel(Place each) {
    return new Band(
        each.along(), each.level() - 2 * each.uncertainty(), each.level() + 2 * each.uncertainty());
  }

  private static Band ofGain(Place each) {
    return new Band(
        each.along(),
        each.gain() - 2 * each.gainUncertainty(),
        each.gain() + 2 * each.gainUncertainty());
  }

  private void eventLines(XYPlot plot) {
    for (Place each : events()) {
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
                    deadband, "leave " + Words.number(deadband, decimals), Ink.LIMIT),
                new SideLabels.Label(
                    -deadband, "leave " + Words.number(-deadband, decimals), Ink.LIMIT))),
        new Legend(
            List.of(
                Legend.Entry.of(Sign.dot(4), "piece"),
                Legend.Entry.line(Ink.CENTRE, ChartStyle.BOLD, "level ± 2u"))));
  }

  private List<EventStrip.Flag> flags() {
    List<EventStrip.Flag> flags = new ArrayList<>();
    for (Place each : events()) {
      flags.add(new EventStrip.Flag(each.along(), shortly(each.point())));
    }
    return flags;
  }

  private static String shortly(TrailPoint point) {
    double done = point.move().done();
    return switch (point.kind()) {
      case CORRECTION -> Double.isNaN(done) ? "Correction" : signed(done);
      case LOT -> "Lot " + point.where().lot();
      case SET_UP -> "Set-up";
      case TARGET -> "Target";
      case SCALE -> "Scale";
      case PIECE -> "";
    };
  }

  private static String signed(double amount) {
    return (amount > 0 ? "+" : "") + Words.number(amount, Math.abs(amount) < 1 ? 3 : 2);
  }

  private List<Target> targets(ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    for (Place each : places) {
      double value = each.piece() ? each.reading() : scale.high();
      targets.add(new Target(each.along(), value, label(each, scale)));
    }
    return targets;
  }

  private String label(Place each, ValueScale scale) {
    TrailPoint point = each.point();
    if (!each.piece()) {
      return point.kind() == TrailPoint.Kind.CORRECTION ? correction(point) : named(point);
    }
    return "Piece %d: %s %%, level %s ± %s %%"
        .formatted(
            point.where().piece(),
            Words.number(each.reading(), scale.decimals()),
            Words.number(each.level(), scale.decimals()),
            Words.number(2 * each.uncertainty(), scale.decimals()));
  }

  private static String named(TrailPoint point) {
    return switch (point.kind()) {
      case LOT -> "New lot: " + point.where().lot();
      case SET_UP -> "Set-up";
      case TARGET -> "Another target: " + Words.number(point.where().targetMm(), 1) + " mm";
      case SCALE -> "The scale was described anew";
      case CORRECTION, PIECE -> "";
    };
  }

  private String correction(TrailPoint point) {
    double advised = point.move().advised();
    double done = point.move().done();
    String what = Double.isNaN(done) ? "amount not recorded" : signed(done) + " " + trail.unit();
    return "Correction: %s; advised before: %s"
        .formatted(what, advised == 0 ? "to leave it" : signed(advised) + " " + trail.unit());
  }

  private Panel gains() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    List<Place> known = places.stream().filter(Place::gainKnown).toList();
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

  private List<Target> gainTargets(List<Place> known, ValueScale scale) {
    return known.stream()
        .filter(each -> !each.piece())
        .map(
            each ->
                new Target(
                    each.along(),
                    each.gain(),
                    "One unit does %s ± %s %% of curvature"
                        .formatted(
                            Words.number(each.gain(), scale.decimals()),
                            Words.number(2 * each.gainUncertainty(), scale.decimals()))))
        .toList();
  }
}
