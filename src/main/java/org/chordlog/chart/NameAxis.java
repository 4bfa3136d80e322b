package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** Names side by side; one that would touch the name before it is left out. */
final class NameAxis extends SymbolAxis {
  private static final long serialVersionUID = 1;
  private static final double GAP_PX = 4;

  NameAxis(String label, List<String> names) {
    super(label, names.toArray(String[]::new));
    setGridBandsVisible(false);
    setRange(-0.5, Math.max(1, names.size()) - 0.5);
    ChartStyle.style(this);
  }

  @Override
  protected List<NumberTick> refreshTicksHorizontal(
      Graphics2D pen, Rectangle2D dataArea, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    double end = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < getSymbols().length; i++) {
      String name = getSymbols()[i];
      double half = pen.getFontMetrics(getTickLabelFont()).stringWidth(name) / 2.0;
      double x = valueToJava2D(i, dataArea, edge);
      boolean fits = x - half >= end;
      end = fits ? x + half + GAP_PX : end;
      ticks.add(
          new NumberTick(i, fits ? name : "", TextAnchor.TOP_CENTER, TextAnchor.TOP_CENTER, 0));
    }
    return ticks;
  }
}
