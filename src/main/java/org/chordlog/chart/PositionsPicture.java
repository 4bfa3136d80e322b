package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Capital;
import org.chordlog.stats.PositionsSnapshot;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** Positions side by side: mean, its confidence interval, least and most value. */
final class PositionsPicture {
  private PositionsPicture() {}

  static Drawing of(PositionsSnapshot positions) {
    ValueScale scale = scale(positions);
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(
        ChartStyle.valueAxis(Capital.of(positions.quantity()) + ", " + positions.unit(), scale));
    // gridlines and markers are drawn only where there is a renderer
    new Layers(plot).line(new XyData(0).dataset(), Ink.POINT, ChartStyle.HAIR);
    for (Double limit :
        ValueScale.present(
            positions.lowerSpecificationLimit(), positions.upperSpecificationLimit())) {
      plot.addRangeMarker(
          new ValueMarker(limit, Ink.SPECIFICATION.color(), ChartStyle.DASH_DOT), Layer.BACKGROUND);
    }
    List<Overlay> overlays =
        List.of(
            new PositionSigns(positions.rows()),
            new SideLabels(LimitLabels.of(positions, scale)),
            new Legend(PositionSigns.legend()));
    Panel panel = new Panel(plot, targets(positions, scale), overlays);
    return Drawing.of(axis(positions), List.of(panel), description(positions, scale), Layout.USUAL);
  }

  private static ValueScale scale(PositionsSnapshot positions) {
    List<Double> values = new ArrayList<>();
    measured(positions).forEach(row -> values.addAll(List.of(row.least(), row.most())));
    return ValueScale.of(
        values,
        ValueScale.present(
            positions.lowerSpecificationLimit(), positions.upperSpecificationLimit()));
  }

  private static List<PositionsSnapshot.Row> measured(PositionsSnapshot positions) {
    return positions.rows().stream().filter(row -> row.count() > 0).toList();
  }

  private static SymbolAxis axis(PositionsSnapshot positions) {
    String[] names =
        positions.rows().stream()
            .map(row -> row.position() + " (" + row.count() + ")")
            .toArray(String[]::new);
    SymbolAxis axis = new SymbolAxis("Position (readings)", names);
    axis.setGridBandsVisible(false);
    axis.setRange(-0.5, Math.max(1, names.length) - 0.5);
    ChartStyle.style(axis);
    return axis;
  }

  private static List<Target> targets(PositionsSnapshot positions, ValueScale scale) {
    List<Target> targets = new ArrayList<>();
    for (int i = 0; i < positions.rows().size(); i++) {
      PositionsSnapshot.Row row = positions.rows().get(i);
      if (row.count() > 0) {
        targets.add(new Target(i, row.mean(), words(row, positions.unit(), scale)));
      }
    }
    return targets;
  }

  private static String words(PositionsSnapshot.Row row, String unit, ValueScale scale) {
    return "%s: mean %s %s, %s to %s, n = %s"
        .formatted(
            row.position(),
            ChartWords.number(row.mean(), scale.decimals()),
            unit,
            ChartWords.number(row.least(), scale.decimals()),
            ChartWords.number(row.most(), scale.decimals()),
            row.count());
  }

  private static String description(PositionsSnapshot positions, ValueScale scale) {
    List<String> rows =
        measured(positions).stream().map(row -> words(row, positions.unit(), scale)).toList();
    return "Positions compared. " + String.join("; ", rows) + ".";
  }
}
