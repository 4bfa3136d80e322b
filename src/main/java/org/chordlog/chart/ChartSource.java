package org.chordlog.chart;

import java.util.Optional;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.drift.DriftSnapshot;

/** Where pictures find what they show; empty where a job has no such thing. */
public interface ChartSource {
  Optional<ChartSnapshot> chart(ChartKind kind);

  default Optional<DistributionSnapshot> distribution() {
    return Optional.empty();
  }

  /** What lies at the edge of a control chart of the same values; empty where there is no room. */
  default Optional<DistributionSnapshot> edge() {
    return Optional.empty();
  }

  default Optional<PositionsSnapshot> positions() {
    return Optional.empty();
  }

  default Optional<DriftSnapshot> drift() {
    return Optional.empty();
  }

  /** With a piece or more. */
  default Optional<CorrectionTrail> corrections() {
    return Optional.empty();
  }

  /** Of pieces that ran through a gauge in a line. */
  default Optional<LineSnapshot> line() {
    return Optional.empty();
  }

  /** Of a study of the gauge that is complete. */
  default Optional<StudySnapshot> study() {
    return Optional.empty();
  }
}
