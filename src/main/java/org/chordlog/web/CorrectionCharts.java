package org.chordlog.web;

import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.CorrectionTrail;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.jspecify.annotations.Nullable;

/** A source of charts with a machine's corrections beside what another one has, if there is one. */
record CorrectionCharts(CorrectionTrail trail, @Nullable ChartSource others)
    implements ChartSource {
  CorrectionCharts(CorrectionTrail trail) {
    this(trail, null);
  }

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return others == null ? Optional.empty() : others.chart(kind);
  }

  @Override
  public Optional<DistributionSnapshot> distribution() {
    return others == null ? Optional.empty() : others.distribution();
  }

  @Override
  public Optional<PositionsSnapshot> positions() {
    return others == null ? Optional.empty() : others.positions();
  }

  @Override
  public Optional<CorrectionTrail> corrections() {
    return Optional.of(trail).filter(CorrectionTrail::measured);
  }
}
