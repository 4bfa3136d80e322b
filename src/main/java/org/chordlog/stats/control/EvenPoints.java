package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Thins the newest points of a long chart as the older ones are thinned, so that a line through
 * them is equally dense all along: of each span the lowest, the highest, the first signalling and
 * the newest excluded point. The newest point of all stays.
 */
final class EvenPoints {
  private static final Comparator<ChartPoint> BY_NUMBER =
      Comparator.comparingLong(ChartPoint::number);
  private static final Comparator<ChartPoint> BY_VALUE =
      Comparator.comparingDouble(ChartPoint::value);

  private EvenPoints() {}

  static List<ChartPoint> of(List<ChartPoint> points, long pointCount) {
    long width = width(pointCount - Thinner.RECENT);
    if (width == 1 || points.isEmpty()) {
      return points;
    }
    TreeSet<ChartPoint> kept = new TreeSet<>(BY_NUMBER);
    kept.add(points.get(points.size() - 1));
    List<ChartPoint> span = new ArrayList<>();
    for (ChartPoint point : points) {
      if (!span.isEmpty() && index(span.get(0), width) != index(point, width)) {
        keep(span, kept);
        span.clear();
      }
      span.add(point);
    }
    keep(span, kept);
    return List.copyOf(kept);
  }

  /** How many points each span holds where so many older points are stored in spans. */
  private static long width(long older) {
    long width = 1;
    while (older > width * Thinner.BUCKETS) {
      width *= 2;
    }
    return width;
  }

  private static long index(ChartPoint point, long width) {
    return (point.number() - 1) / width;
  }

  private static void keep(List<ChartPoint> span, Set<ChartPoint> kept) {
    List<ChartPoint> counting = span.stream().filter(p -> !p.excluded()).toList();
    counting.stream().min(BY_VALUE).ifPresent(kept::add);
    counting.stream().max(BY_VALUE).ifPresent(kept::add);
    counting.stream().filter(ChartPoint::signalling).findFirst().ifPresent(kept::add);
    Optional<ChartPoint> out = span.stream().filter(ChartPoint::excluded).max(BY_NUMBER);
    out.ifPresent(kept::add);
  }
}
