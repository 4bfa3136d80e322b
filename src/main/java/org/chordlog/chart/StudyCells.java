package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.chart.StudySnapshot.Cell;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** The cells of a study side by side, operator by operator, below one quantity. */
record StudyCells(List<Cell> cells, String unit) {
  /** A plot of that quantity, divided where an operator begins. */
  XYPlot plot(String quantity, ValueScale scale) {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis(quantity + ", " + unit, scale));
    for (EventStrip.Flag each : operators()) {
      plot.addDomainMarker(
          new ValueMarker(each.along(), Ink.SOFT.color(), ChartStyle.DOTTED), Layer.BACKGROUND);
    }
    return plot;
  }

  /** Where each operator's cells begin. */
  List<EventStrip.Flag> operators() {
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
  XyData trace(List<Double> values) {
    XyData line = new XyData(2 * cells.size());
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0 && begins(i)) {
        line.gap();
      }
      line.add(i, values.get(i));
    }
    return line;
  }

  /** Operator and piece, place or day. */
  String name(int cell) {
    return cells.get(cell).operator() + ", " + cells.get(cell).spot();
  }

  static SideLabels.Label label(String name, double at, Ink ink, ValueScale scale) {
    return new SideLabels.Label(at, name + " " + ChartWords.number(at, scale.decimals()), ink);
  }
}
