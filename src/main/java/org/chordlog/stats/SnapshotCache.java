package org.chordlog.stats;

import java.lang.ref.SoftReference;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Scope;

/**
 * What has been made of a characteristic since its newest reading or event, so that those who ask
 * next get it again. Charts, the large ones, only as long as there is memory for them.
 */
final class SnapshotCache {
  private final Map<Scope, Summary> summaries = new EnumMap<>(Scope.class);
  private final Map<Scope, DistributionSnapshot> distributions = new EnumMap<>(Scope.class);
  private SoftReference<Map<ChartKind, ChartSnapshot>> charts = new SoftReference<>(null);

  void clear() {
    summaries.clear();
    distributions.clear();
    charts.clear();
  }

  Summary summary(Scope scope, Function<Scope, Summary> make) {
    return summaries.computeIfAbsent(scope, make);
  }

  DistributionSnapshot distribution(Scope scope, Function<Scope, DistributionSnapshot> make) {
    return distributions.computeIfAbsent(scope, make);
  }

  ChartSnapshot chart(ChartKind kind, Function<ChartKind, ChartSnapshot> make) {
    Map<ChartKind, ChartSnapshot> kept = charts.get();
    if (kept == null) {
      kept = new EnumMap<>(ChartKind.class);
      charts = new SoftReference<>(kept);
    }
    return kept.computeIfAbsent(kind, make);
  }
}
