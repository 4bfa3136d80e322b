package org.chordlog.bench;

import java.util.Locale;

/** How many of so many, in percent with its standard error. */
public final class Rate {
  private long count;
  private long of;

  public static Rate of(long count, long of) {
    Rate rate = new Rate();
    rate.count = count;
    rate.of = of;
    return rate;
  }

  public void add(boolean one) {
    of++;
    count += one ? 1 : 0;
  }

  public double percent() {
    return of == 0 ? Double.NaN : 100.0 * count / of;
  }

  /** Binomial, with half a case added to either side so that it is never 0. */
  public double error() {
    double part = (count + 0.5) / (of + 1.0);
    return 100 * Math.sqrt(part * (1 - part) / Math.max(1, of));
  }

  public long count() {
    return count;
  }

  public long of() {
    return of;
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.2f ± %.2f %% (%d of %d)", percent(), error(), count, of);
  }
}
