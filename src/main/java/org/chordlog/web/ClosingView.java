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
    List<Feature> features,
    @JsonPropertyDescription("what to check it by: the feature that changes most with the radius")
        String checkBy) {
  /** Something that can be measured on the bent piece. */
  record Feature(
      String name,
      double targetMm,
      double valueMm,
      double standardUncertaintyMm,
      @JsonPropertyDescription("change for 1 mm of radius") double perMm) {}

  /** The piece that was measured. */
  record Bent(int piece, double radiusMm, double standardUncertaintyMm) {}

  private static final String GAP = "gap along the arc, open: above 0";

  static ClosingView ofArc(Arc arc, Bent bent) {
    return of(
        arc,
        bent,
        Stream.of(Arc.Feature.values()).map(each -> feature(arc, each, bent)).toList(),
        arc.mostSensitive().words());
  }

  private static Feature feature(Arc arc, Arc.Feature each, Bent bent) {
    return new Feature(
        each.words(),
        arc.valueMm(each, arc.targetMm()),
        arc.valueMm(each, bent.radiusMm()),
        arc.uncertaintyMm(each, bent.standardUncertaintyMm()),
        arc.sensitivity(each));
  }

  /** A full turn. */
  static ClosingView ofRing(Arc turn, Bent bent) {
    Ring ring = Ring.ofDeveloped(turn.developedMm());
    double u = Ring.gapUncertaintyMm(bent.standardUncertaintyMm());
    double perMm = Ring.gapUncertaintyMm(1);
    List<Feature> gaps =
        List.of(
            new Feature(GAP, 0, ring.arcGapMm(bent.radiusMm()), u, perMm),
            new Feature(
                "straight gap from end to end", 0, ring.straightGapMm(bent.radiusMm()), u, perMm));
    return of(turn, bent, gaps, GAP);
  }

  private static ClosingView of(Arc arc, Bent bent, List<Feature> features, String checkBy) {
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
