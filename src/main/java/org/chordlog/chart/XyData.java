package org.chordlog.chart;

import java.util.List;
import java.util.function.Predicate;
import org.chordlog.stats.control.ChartPoint;
import org.jfree.data.xy.DefaultXYDataset;

/** Points as series of JFreeChart; a NaN breaks a line. */
final class XyData {
  private final double[][] xy;
  private int size;

  XyData(int capacity) {
    xy = new double[2][capacity];
  }

  XyData add(double x, double y) {
    xy[0][size] = x;
    xy[1][size++] = y;
    return this;
  }

  XyData gap() {
    return add(size == 0 ? 0 : xy[0][size - 1], Double.NaN);
  }

  DefaultXYDataset dataset() {
    DefaultXYDataset dataset = new DefaultXYDataset();
    dataset.addSeries(
        "",
        new double[][] {
          java.util.Arrays.copyOf(xy[0], size), java.util.Arrays.copyOf(xy[1], size)
        });
    return dataset;
  }

  static DefaultXYDataset of(List<ChartPoint> points, Predicate<ChartPoint> chosen) {
    XyData data = new XyData(points.size());
    points.stream().filter(chosen).forEach(p -> data.add((double) p.number(), p.value()));
    return data.dataset();
  }
}
