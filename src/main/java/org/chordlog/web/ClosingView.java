package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.Ring;

/** How the newest piece of a job closes, as far as its radius tells; lengths on the centreline. */
record ClosingView(
    double targetMm,
    double angleDegrees,
    double developedLengthMm,
    @JsonPropertyDescription("LENGTH: cut before bending; ANGLE: the ends are cut after it")
        Arc.Fixed fixed,
    int piece,
    @JsonPropertyDescription("its mean over the positions measured, by curvature") double radiusMm,
    double radiusStandardUncertaintyMm,
    List<Line> features,
    @JsonPropertyDescription("what to check it by: the feature that changes most with the radius")
        String checkBy) {
  /** Something that can be measured on the bent piece. */
  record Line(
      ClosingFeature feature,
      String name,
      double targetMm,
      double valueMm,
      double standardUncertaintyMm,
      @JsonPropertyDescription("change for 1 mm of radius") double perMm) {}

  /** The piece that was measured. */
  record Bent(int piece, double radiusMm, double standardUncertaintyMm) {}

  /** Radius on the centreline that a measured feature shows. */
  record Shown(double radiusMm, double standardUncertaintyMm) {}

  static ClosingView ofArc(Arc arc, Bent bent) {
    return of(
        arc,
        bent,
        Stream.of(Arc.Feature.values()).map(each -> line(arc, each, bent)).toList(),
        arc.mostSensitive().words());
  }

  private static Line line(Arc arc, Arc.Feature each, Bent bent) {
    return new Line(
        ClosingFeature.of(each),
        each.words(),
        arc.valueMm(each, arc.targetMm()),
        arc.valueMm(each, bent.radiusMm()),
        arc.uncertaintyMm(each, bent.standardUncertaintyMm()),
        arc.sensitivity(each));
  }

  /** A full turn. */
  static ClosingView ofRing(Arc turn, Bent bent) {
    Ring ring = Ring.ofDeveloped(turn.developedMm());
    List<Line> gaps =
        List.of(
            line(ClosingFeature.GAP, ring.arcGapMm(bent.radiusMm()), bent),
            line(ClosingFeature.STRAIGHT_GAP, ring.straightGapMm(bent.radiusMm()), bent));
    return of(turn, bent, gaps, ClosingFeature.GAP.words());
  }

  private static Line line(ClosingFeature gap, double valueMm, Bent bent) {
    double u = Ring.gapUncertaintyMm(bent.standardUncertaintyMm());
    return new Line(gap, gap.words(), 0, valueMm, u, Ring.gapUncertaintyMm(1));
  }

  private static ClosingView of(Arc arc, Bent bent, List<Line> features, String checkBy) {
    return new ClosingView(
        arc.targetMm(),
        Math.toDegrees(arc.angleRadians()),
        arc.developedMm(),
        arc.fixed(),
        bent.piece(),
        bent.radiusMm(),
        bent.standardUncertaintyMm(),
        features,
        checkBy);
  }
}
