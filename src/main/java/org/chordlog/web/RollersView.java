package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Sentence;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.verdict.RollerFigures;
import org.chordlog.verdict.RollerStatement;
import org.chordlog.verdict.Statement;
import org.jspecify.annotations.Nullable;

/** The rollers of a machine and the judgement on them. */
record RollersView(
    Statement statement,
    @JsonPropertyDescription("pieces that ran through and were looked at") int pieces,
    List<RollerView> rollers) {
  /** A roller, and what its ripple is as far as it can be seen. */
  record RollerView(
      String name,
      double diameterMm,
      Face side,
      boolean driven,
      @JsonPropertyDescription("of its ripple, along the face that lengths are measured on")
          @Nullable Double wavelengthMm,
      @JsonPropertyDescription("why its ripple can't be seen; null if it can")
          @Nullable Sentence unseen,
      @JsonPropertyDescription("percent of curvature, over the pieces judged together")
          @Nullable Double amplitudePercent,
      @JsonPropertyDescription("coverage factor 2") @Nullable Double uncertaintyPercent,
      @JsonPropertyDescription("that chance alone makes as much") @Nullable Double probability,
      @JsonPropertyDescription("pieces for which it has been above its limit") long aboveFor) {
    static RollerView of(RollerFigures known) {
      return new RollerView(
          known.roller().name(),
          known.roller().diameterMm(),
          known.roller().side(),
          known.roller().driven(),
          known.wavelengthMm(),
          known.unseen(),
          known.amplitudePercent(),
          known.uncertaintyPercent(),
          known.probability(),
          known.aboveLimitFor());
    }
  }

  static RollersView of(RollerWatch.Report report) {
    RollerStatement said = new RollerStatement(report.verdict(), report.twice(), report.trends());
    return new RollersView(
        said.statement(),
        report.pieces(),
        said.figures(report.rollers()).stream().map(RollerView::of).toList());
  }
}
