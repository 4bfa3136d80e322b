package org.chordlog.chart;

import java.util.List;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.jfree.data.xy.DefaultIntervalXYDataset;
import org.jfree.data.xy.IntervalXYDataset;

/** The classes of a distribution as bars; those beyond a specification limit apart. */
final class Bars {
  private Bars() {}

  static IntervalXYDataset of(DistributionSnapshot values, boolean beyond) {
    List<DistributionSnapshot.Bin> bins =
        values.bins().stream().filter(bin -> beyond(values, bin) == beyond).toList();
    double[][] data = new double[6][bins.size()];
    for (int i = 0; i < bins.size(); i++) {
      DistributionSnapshot.Bin bin = bins.get(i);
      data[0][i] = (bin.low() + bin.high()) / 2;
      data[1][i] = bin.low();
      data[2][i] = bin.high();
      data[3][i] = (double) bin.count();
      data[5][i] = (double) bin.count();
    }
    DefaultIntervalXYDataset dataset = new DefaultIntervalXYDataset();
    dataset.addSeries("", data);
    return dataset;
  }

  static List<Target> targets(DistributionSnapshot values) {
    return values.bins().stream().map(bin -> target(values, bin)).toList();
  }

  private static Target target(DistributionSnapshot values, DistributionSnapshot.Bin bin) {
    int decimals = new ValueScale(0, 20 * (bin.high() - bin.low())).decimals();
    String label =
        "%s to %s %s: %s"
            .formatted(
                ChartWords.number(bin.low(), decimals),
                ChartWords.number(bin.high(), decimals),
                values.unit(),
                bin.count());
    return new Target((bin.low() + bin.high()) / 2, (double) bin.count(), label);
  }

  /** What a density of 1 per unit is as a count in one class. */
  static double countPerDensity(DistributionSnapshot values) {
    return values.bins().isEmpty()
        ? 0
        : (double) values.count() * (values.bins().get(0).high() - values.bins().get(0).low());
  }

  static long outside(DistributionSnapshot values) {
    return values.bins().stream()
        .filter(bin -> beyond(values, bin))
        .mapToLong(DistributionSnapshot.Bin::count)
        .sum();
  }

  static boolean beyond(DistributionSnapshot values, DistributionSnapshot.Bin bin) {
    Double lower = values.lowerSpecificationLimit();
    Double upper = values.upperSpecificationLimit();
    return (lower != null && bin.high() <= lower) || (upper != null && bin.low() >= upper);
  }
}
