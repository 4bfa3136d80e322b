package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.chart.StudySnapshot.Bias;
import org.chordlog.chart.StudySnapshot.Cell;
import org.chordlog.chart.StudySnapshot.Component;
import org.chordlog.chart.StudySnapshot.Fit;
import org.chordlog.chart.StudySnapshot.Point;

/** Invented studies as their pictures show them. */
final class StudySnapshots {
  private StudySnapshots() {}

  /** Both of pieces and of masters, as no single study is. */
  static StudySnapshot everything() {
    return new StudySnapshot("mm", "Piece", cells(5, 2), components(), bias(true), null);
  }

  /** Three operators; the last one's last piece slipped. */
  static List<Cell> cells(int pieces, int repeats) {
    Random random = new Random(4);
    List<Cell> cells = new ArrayList<>();
    for (String operator : List.of("Ann", "Bo", "Żak")) {
      for (int piece = 1; piece <= pieces; piece++) {
        List<Double> values = new ArrayList<>();
        for (int repeat = 0; repeat < repeats; repeat++) {
          values.add(1790 + 4.0 * piece + 0.3 * random.nextGaussian());
        }
        cells.add(new Cell(operator, String.valueOf(piece), values));
      }
    }
    Cell last = cells.remove(cells.size() - 1);
    List<Double> slipped = new ArrayList<>(last.values());
    slipped.set(0, slipped.get(0) + 6);
    cells.add(new Cell(last.operator(), last.spot(), slipped));
    return cells;
  }

  static List<Component> components() {
    return List.of(
        new Component("EV", "repeatability", 1.1, 0.8, 1.7),
        new Component("AV", "operators (reproducibility)", 0.9, 0.0, 12.4),
        new Component("GRR", "gauge (repeatability and reproducibility)", 1.42, 0.9, 12.5),
        new Component("PV", "between parts", 6.3, 3.7, null));
  }

  static Bias bias(boolean overDepth) {
    Random random = new Random(8);
    List<Point> points = new ArrayList<>();
    List<Fit> fits = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double along = overDepth ? 2 + i / 3 : i + 1;
      points.add(new Point(along, "R " + (i / 3 + 1), 0.004 + 0.002 * random.nextGaussian()));
    }
    for (double along : overDepth ? new double[] {2, 3.5, 5} : new double[] {0.5, 12.5}) {
      fits.add(new Fit(along, 0.004, 0.0025, 0.0055));
    }
    return new Bias(overDepth, points, fits);
  }
}
