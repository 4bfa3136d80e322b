package org.chordlog.chart;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnitSource;
import org.jfree.chart.axis.TickUnits;

/** Steps of 1, 2 and 5 with as many decimals as each needs and no grouping. */
final class Ticks {
  private static final int[] STEPS = {1, 2, 5};

  private Ticks() {}

  static TickUnitSource values() {
    return from(-9);
  }

  static TickUnitSource counts() {
    return from(0);
  }

  private static TickUnitSource from(int leastPower) {
    TickUnits units = new TickUnits();
    for (int power = leastPower; power <= 12; power++) {
      for (int step : STEPS) {
        units.add(new NumberTickUnit(step * Math.pow(10, power), format(Math.max(0, -power)), 0));
      }
    }
    return units;
  }

  private static DecimalFormat format(int decimals) {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    symbols.setMinusSign('\u2212');
    DecimalFormat format = new DecimalFormat("0", symbols);
    format.setMinimumFractionDigits(decimals);
    format.setMaximumFractionDigits(decimals);
    return format;
  }
}
