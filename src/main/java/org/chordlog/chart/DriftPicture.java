package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Capital;
import org.chordlog.stats.drift.DriftSnapshot;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** A machine over its jobs: deviations, trend with band, forecast, jump, limits, marks. */
final class DriftPicture {
  /** Of the way from no deviation to the limits and the values: less is not worth a scale. */
  private static final double LEAST_PART = 0.2;

  private final DriftSnapshot drift;
  private final XYPlot plot = new XYPlot();
  private final ValueScale scale;

  private DriftPicture(DriftSnapshot drift) {
    this.drift = drift;
    List<Double> values = new ArrayList<>();
    for (DriftSnapshot.BlockMean job : drift.jobs()) {
      values.add(job.deviation());
      ValueScale.add(values, job.lower());
      ValueScale.add(values, job.upper());
    }
    drift.trend().forEach(at -> values.addAll(List.of(at.lower(), at.upper())));
    List<Double> limits = ValueScale.present(drift.lowerLimit(), drift.upperLimit());
    scale = ValueScale.of(values, limits, LEAST_PART * reach(values, limits));
  }

  private static double reach(List<Double> values, List<Double> limits) {
    List<Double> all = new ArrayList<>(values);
    all.addAll(limits);
    all.add(0.0);
    return ValueScale.of(all).height();
  }

  static Drawing of(DriftSnapshot drift) {
    DriftPicture picture = new DriftPicture(drift);
    String description =
        "Machine %s, %s points: %s"
            .formatted(drift.machine(), drift.jobs().size(), drift.verdict());
    return Drawing.of(picture.axis(), List.of(picture.panel()), description, Layout.USUAL);
  }

  private NumberAxis axis() {
    List<Double> along =
        new ArrayList<>(drift.jobs().stream().map(DriftSnapshot.BlockMean::pieces).toList());
    drift.trend().forEach(at -> along.add(at.pieces()));
    ValueScale width = ValueScale.of(along);
    return ChartStyle.countAxis(
        "Pieces bent on the machine", Math.max(0, width.low()), width.high());
  }

  private Panel panel() {
    ChartStyle.style(plot);
    plot.setRangeAxis(
        ChartStyle.valueAxis(Capital.of(drift.quantity()) + ", " + drift.unit(), scale));
    Layers layers = new Layers(plot);
    layers.line(trend(false), Ink.CENTRE, ChartStyle.BOLD);
    layers.line(trend(true), Ink.CENTRE, ChartStyle.DASHED);
    band();
    for (Double limit : ValueScale.present(drift.lowerLimit(), drift.upperLimit())) {
      plot.addRangeMarker(
          new ValueMarker(limit, Ink.LIMIT.color(), ChartStyle.DASHED), Layer.BACKGROUND);
    }
    Double jump = drift.jumpAtPieces();
    if (jump != null) {
      plot.addDomainMarker(new ValueMarker(jump, Ink.EVENT.color(), ChartStyle.DOTTED));
    }
    new DriftMarks(drift.marks()).lines(plot);
    return new Panel(plot, targets(), overlays());
  }

  private List<Overlay> overlays() {
    List<Overlay> overlays = new ArrayList<>();
    overlays.addAll(new DriftMarks(drift.marks()).strips());
    overlays.add(new JobSigns(drift.jobs()));
    overlays.add(new SideLabels(LimitLabels.of(drift, scale)));
    overlays.add(new Legend(legend()));
    Double jump = drift.jumpAtPieces();
    if (jump != null) {
      overlays.add(new TopLabels(List.of(new SideLabels.Label(jump, "Jump", Ink.EVENT))));
    }
    return overlays;
  }

  private List<Legend.Entry> legend() {
    List<Legend.Entry> entries = new ArrayList<>();
    boolean jobs = drift.jobs().stream().anyMatch(job -> job.lower() != null);
    entries.add(Legend.Entry.of(Sign.dot(5), jobs ? "job, 95 % interval" : "piece"));
    if (!drift.trend().isEmpty()) {
      entries.add(Legend.Entry.line(Ink.CENTRE, ChartStyle.BOLD, "trend"));
      entries.add(Legend.Entry.line(Ink.CENTRE, ChartStyle.DASHED, "forecast"));
    }
    return entries;
  }

  private org.jfree.data.xy.XYDataset trend(boolean ahead) {
    XyData data = new XyData(drift.trend().size());
    drift.trend().stream()
        .filter(
            at ->
                ahead
                    ? at.pieces() >= drift.forecastFromPieces()
                    : at.pieces() <= drift.forecastFromPieces())
        .forEach(at -> data.add(at.pieces(), at.value()));
    return data.dataset();
  }

  private void band() {
    List<DriftSnapshot.Trend> trend = drift.trend();
    double[] outline = new double[4 * trend.size()];
    for (int i = 0; i < trend.size(); i++) {
      outline[2 * i] = trend.get(i).pieces();
      outline[2 * i + 1] = trend.get(i).lower();
      outline[outline.length - 2 * i - 2] = trend.get(i).pieces();
      outline[outline.length - 2 * i - 1] = trend.get(i).upper();
    }
    if (trend.size() > 1) {
      plot.getRenderer(0)
          .addAnnotation(
              new XYPolygonAnnotation(outline, null, null, Ink.BAND.tint()), Layer.BACKGROUND);
    }
  }

  private static String name(DriftSnapshot.BlockMean job) {
    return job.name().isEmpty() ? "Piece " + Math.round(job.pieces()) : job.name();
  }

  private List<Target> targets() {
    List<Target> targets = new ArrayList<>(new DriftMarks(drift.marks()).targets(scale));
    drift.jobs().stream()
        .map(
            job ->
                new Target(
                    job.pieces(),
                    job.deviation(),
                    "%s: %s %s"
                        .formatted(
                            name(job),
                            ChartWords.number(job.deviation(), scale.decimals()),
                            drift.unit())))
        .forEach(targets::add);
    return targets;
  }
}
