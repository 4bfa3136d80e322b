package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jspecify.annotations.Nullable;

/**
 * Radius along pieces, the newest bold with its evaluated length shaded and its band of
 * uncertainty, those before it thin; straight ends leave at the top.
 */
final class ProfilePicture {
  private static final int TARGETS = 40;

  private final LineSnapshot.Profiles profiles;
  private final String unit;
  private final LineSnapshot.Trace newest;
  private final ValueScale scale;

  private ProfilePicture(LineSnapshot.Profiles profiles, String unit) {
    this.profiles = profiles;
    this.unit = unit;
    newest = profiles.traces().get(0);
    scale = scale(profiles);
  }

  static Optional<Drawing> of(LineSnapshot line) {
    LineSnapshot.Profiles profiles = line.profiles();
    return profiles == null || profiles.traces().isEmpty()
        ? Optional.empty()
        : Optional.of(new ProfilePicture(profiles, line.unit()).drawing());
  }

  private static ValueScale scale(LineSnapshot.Profiles profiles) {
    List<Double> values = new ArrayList<>(List.of(profiles.target()));
    for (LineSnapshot.Trace trace : profiles.traces()) {
      for (LineSnapshot.Place place : trace.evaluated()) {
        values.add(place.radius());
      }
    }
    for (LineSnapshot.Place place : profiles.traces().get(0).evaluated()) {
      values.add(place.lower());
      ValueScale.add(values, place.upper());
    }
    return ValueScale.of(values, ValueScale.present(profiles.lowerLimit(), profiles.upperLimit()));
  }

  private Drawing drawing() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis("Radius, " + unit, scale));
    Layers layers = new Layers(plot);
    for (int i = profiles.traces().size() - 1; i > 0; i--) {
      layers.line(line(profiles.traces().get(i)).dataset(), Ink.LINE, ChartStyle.HAIR);
    }
    layers.line(line(newest).dataset(), Ink.CENTRE, ChartStyle.BOLD);
    band(plot);
    limits(plot);
    Panel panel = new Panel(plot, targets(), overlays());
    return Drawing.of(along(), List.of(panel), described(), Layout.USUAL);
  }

  private NumberAxis along() {
    double most = 1;
    for (LineSnapshot.Trace trace : profiles.traces()) {
      for (LineSnapshot.Spot spot : trace.spots()) {
        most = Math.max(most, spot.along());
      }
    }
    return ChartStyle.axis("Along the piece, " + unit, 0, 1.02 * most);
  }

  /** Cut off at the ends of the scale. */
  private XyData line(LineSnapshot.Trace trace) {
    XyData data = new XyData(trace.spots().size());
    for (LineSnapshot.Spot spot : trace.spots()) {
      data.add(spot.along(), spot.radius() > 0 ? scale.inside(spot.radius()) : scale.high());
    }
    return data;
  }

  private void band(XYPlot plot) {
    List<LineSnapshot.Place> places = newest.evaluated();
    if (places.isEmpty()) {
      return;
    }
    List<Band> bands =
        places.stream().map(each -> new Band(each.along(), each.lower(), upper(each))).toList();
    Band.fill(plot, bands, scale);
    plot.addDomainMarker(
        new IntervalMarker(
            places.get(0).along(), places.get(places.size() - 1).along(), Ink.GRID.tint()),
        Layer.BACKGROUND);
  }

  private double upper(LineSnapshot.Place place) {
    Double upper = place.upper();
    return upper == null ? scale.high() : upper;
  }

  private void limits(XYPlot plot) {
    for (Double limit : ValueScale.present(profiles.lowerLimit(), profiles.upperLimit())) {
      plot.addRangeMarker(
          new ValueMarker(limit, Ink.SPECIFICATION.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    }
    plot.addRangeMarker(
        new ValueMarker(profiles.target(), Ink.SOFT.color(), ChartStyle.DOTTED), Layer.BACKGROUND);
  }

  private List<Overlay> overlays() {
    List<SideLabels.Label> labels = new ArrayList<>();
    label(labels, "LSL", profiles.lowerLimit());
    label(labels, "USL", profiles.upperLimit());
    List<Legend.Entry> entries = new ArrayList<>();
    entries.add(Legend.Entry.line(Ink.CENTRE, ChartStyle.BOLD, newest.name()));
    if (profiles.traces().size() > 1) {
      entries.add(Legend.Entry.line(Ink.LINE, ChartStyle.HAIR, "before it"));
    }
    return List.of(new SideLabels(labels), new Legend(entries));
  }

  private void label(List<SideLabels.Label> labels, String name, @Nullable Double limit) {
    if (limit != null && scale.shows(limit)) {
      labels.add(
          new SideLabels.Label(
              limit, name + " " + ChartWords.number(limit, scale.decimals()), Ink.SPECIFICATION));
    }
  }

  private List<Target> targets() {
    List<Target> targets = new ArrayList<>();
    if (newest.evaluated().isEmpty()) {
      List<LineSnapshot.Spot> spots = newest.spots();
      int step = Math.max(1, spots.size() / TARGETS);
      for (int i = 0; i < spots.size(); i += step) {
        LineSnapshot.Spot spot = spots.get(i);
        double shown = spot.radius() > 0 ? spot.radius() : scale.high();
        targets.add(new Target(spot.along(), scale.inside(shown), at(spot.along()) + radius(spot)));
      }
      return targets;
    }
    for (LineSnapshot.Place place : newest.evaluated()) {
      targets.add(new Target(place.along(), place.radius(), at(place.along()) + radius(place)));
    }
    return targets;
  }

  private String at(double along) {
    return newest.name() + " at " + place(along) + " " + unit + ": ";
  }

  private String place(double along) {
    return ChartWords.number(along, "mm".equals(unit) ? 0 : 1);
  }

  private String radius(LineSnapshot.Spot spot) {
    return spot.radius() > 0 && scale.shows(spot.radius())
        ? "R " + ChartWords.number(spot.radius(), scale.decimals()) + " " + unit
        : "straight, or nearly";
  }

  private String radius(LineSnapshot.Place place) {
    Double upper = place.upper();
    return "R %s %s (%s to %s)"
        .formatted(
            ChartWords.number(place.radius(), scale.decimals()),
            unit,
            ChartWords.number(place.lower(), scale.decimals()),
            upper == null ? "flat" : ChartWords.number(upper, scale.decimals()));
  }

  private String described() {
    List<LineSnapshot.Place> places = newest.evaluated();
    String others =
        profiles.traces().size() == 1
            ? ""
            : ", and %s pieces before it".formatted(profiles.traces().size() - 1);
    if (places.isEmpty()) {
      return "Radius along %s, which still runs through%s.".formatted(newest.name(), others);
    }
    double least = places.stream().mapToDouble(LineSnapshot.Place::radius).min().orElseThrow();
    double most = places.stream().mapToDouble(LineSnapshot.Place::radius).max().orElseThrow();
    return "Radius along %s%s; evaluated from %s to %s %s, there between %s and %s %s."
        .formatted(
            newest.name(),
            others,
            place(places.get(0).along()),
            place(places.get(places.size() - 1).along()),
            unit,
            ChartWords.number(least, scale.decimals()),
            ChartWords.number(most, scale.decimals()),
            unit);
  }
}
