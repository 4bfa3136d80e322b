package org.chordlog.stats.control;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What remains of a span of points; adding it to a wider one loses nothing more. */
final class Bucket {
  private final long index;
  private @Nullable Plotted lowest;
  private @Nullable Plotted highest;
  private @Nullable Plotted signalling;
  private @Nullable Plotted excluded;

  Bucket(long index) {
    this.index = index;
  }

  long index() {
    return index;
  }

  void add(Plotted plotted) {
    if (plotted.point().excluded()) {
      excluded = plotted;
      return;
    }
    if (lowest == null || plotted.lowest() < lowest.lowest()) {
      lowest = plotted;
    }
    if (highest == null || plotted.value() > highest.value()) {
      highest = plotted;
    }
    if (!plotted.signals().isEmpty()
        && (signalling == null || reach(plotted) > reach(signalling))) {
      signalling = plotted;
    }
  }

  /** In the order of their numbers, each once. */
  void forEach(Consumer<Plotted> use) {
    for (Plotted each = after(0); each != null; each = after(each.number())) {
      use.accept(each);
    }
  }

  /** The remaining point with the least number above that one. */
  private @Nullable Plotted after(long number) {
    return sooner(sooner(lowest, highest, number), sooner(signalling, excluded, number), number);
  }

  private static @Nullable Plotted sooner(@Nullable Plotted a, @Nullable Plotted b, long above) {
    if (a == null || a.number() <= above) {
      return b == null || b.number() <= above ? null : b;
    }
    return b == null || b.number() <= above || a.number() <= b.number() ? a : b;
  }

  private static double reach(Plotted plotted) {
    return Math.abs(plotted.z());
  }
}
