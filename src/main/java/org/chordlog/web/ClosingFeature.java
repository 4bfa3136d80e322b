package org.chordlog.web;

import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.Ring;
import org.chordlog.measure.BadInput;

/** What can be measured on a bent piece to see whether it closes: the first two on a full turn. */
enum ClosingFeature {
  GAP("gap along the arc, open: above 0"),
  STRAIGHT_GAP("straight gap from end to end"),
  CHORD(Arc.Feature.CHORD.words()),
  RISE(Arc.Feature.RISE.words()),
  END_OFFSET(Arc.Feature.END_OFFSET.words());

  private static final String OF_A_TURN = "gap, straight-gap";
  private static final String OF_AN_ARC = "chord, rise, end-offset";
  private final String words;

  ClosingFeature(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  static ClosingFeature of(Arc.Feature feature) {
    return valueOf(feature.name());
  }

  /** Radius on the centreline that this measured on a full turn shows. */
  ClosingView.Shown shownBy(Ring ring, double measuredMm, double uncertaintyMm) {
    double u = uncertaintyMm / Ring.gapUncertaintyMm(1);
    return switch (this) {
      case GAP -> new ClosingView.Shown(ring.radiusFromArcGapMm(measuredMm), u);
      case STRAIGHT_GAP -> new ClosingView.Shown(ring.radiusFromStraightGapMm(measuredMm), u);
      case CHORD, RISE, END_OFFSET -> throw wrong("is not a feature of a full ring", OF_A_TURN);
    };
  }

  /** The same of an arc. */
  ClosingView.Shown shownBy(Arc arc, double measuredMm, double uncertaintyMm) {
    return switch (this) {
      case GAP, STRAIGHT_GAP -> throw wrong("is not a feature of an arc", OF_AN_ARC);
      case CHORD, RISE, END_OFFSET ->
          shown(arc, Arc.Feature.valueOf(name()), measuredMm, uncertaintyMm);
    };
  }

  private static ClosingView.Shown shown(Arc arc, Arc.Feature feature, double measured, double u) {
    return new ClosingView.Shown(
        arc.radiusMm(feature, measured), arc.radiusUncertaintyMm(feature, u));
  }

  private BadInput wrong(String problem, String allowed) {
    return new BadInput("feature", words, problem, allowed);
  }
}
