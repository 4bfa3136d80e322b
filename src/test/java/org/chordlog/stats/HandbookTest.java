package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Scope;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Calibration factors of a heat flow meter, data set ZARR13 of the NIST/SEMATECH e-Handbook of
 * Statistical Methods (data read): mean, standard deviation and the 95 % interval of the mean as
 * printed in section 1.3.5.2; the lag-1 autocorrelation of section 1.4.2.8 is from memory.
 */
final class HandbookTest {
  private final Summary summary =
      Data.fed(
              Data.plan(1, Limits.NONE, ChartSettings.usual()),
              Data.column(Data.rows("handbook-zarr13.csv"), 0))
          .summary("middle", Scope.JOB);

  private Figure figure(String name) {
    return summary.figure(name).orElseThrow();
  }

  private static double end(@Nullable Double of) {
    return of == null ? Double.NaN : of;
  }

  @Test
  void meanAndItsInterval() {
    Figure mean = figure("mean");
    assertEquals(195, summary.count());
    assertEquals(9.261460, Data.value(summary, "mean"), 1e-6);
    assertEquals(9.258242, end(mean.lower()), 1e-6);
    assertEquals(9.264679, end(mean.upper()), 1e-6);
  }

  @Test
  void deviationAndAutocorrelation() {
    assertEquals(0.022789, Data.value(summary, "standardDeviationOverall"), 5e-7);
    assertEquals(0.281, Data.value(summary, "autocorrelation"), 5e-4);
  }
}
