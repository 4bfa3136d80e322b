package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.CorrectionTrail;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.store.Store;

/** The newest pieces of a job that ran through a gauge in a line, for its pictures. */
record JobLine(Store store) {
  private static final int LOOKED_AT = 100;

  /**
   * Up to {@code count}, the newest first; empty where none of the newest readings is of a line.
   */
  Optional<LineSnapshot> snapshot(Job job, int count) {
    List<LineSnapshot.Trace> traces = new ArrayList<>();
    for (Reading reading : store.readings().latestOfJob(job.id(), Long.MAX_VALUE, LOOKED_AT)) {
      if (reading.captured().mode() == CaptureMode.PASSING && traces.size() < count) {
        PieceOfLine.find(store, reading).ifPresent(piece -> traces.add(piece.trace()));
      }
    }
    return traces.isEmpty() ? Optional.empty() : Optional.of(of(traces, job));
  }

  static LineSnapshot of(List<LineSnapshot.Trace> traces, Job job) {
    return new LineSnapshot(
        "mm", PieceOfLine.profiles(traces, job.specification()), null, List.of());
  }

  /** These beside the other pictures of a job. */
  record Beside(ChartSource others, Optional<LineSnapshot> line) implements ChartSource {
    @Override
    public Optional<ChartSnapshot> chart(ChartKind kind) {
      return others.chart(kind);
    }

    @Override
    public Optional<DistributionSnapshot> distribution() {
      return others.distribution();
    }

    @Override
    public Optional<PositionsSnapshot> positions() {
      return others.positions();
    }

    @Override
    public Optional<CorrectionTrail> corrections() {
      return others.corrections();
    }
  }
}
