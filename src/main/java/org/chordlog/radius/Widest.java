package org.chordlog.radius;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;

/** The widest radius that a bridge with an indicator tells from a flat. */
public final class Widest {
  private static final double BEYOND_MM = 1e12;
  private static final int HALVINGS = 60;

  private Widest() {}

  /** In mm, rounded down to two digits. */
  public static double radiusMm(Bridge bridge, Indicator indicator) {
    RadiusModel model = RadiusModel.of(setUp(bridge, indicator));
    double told = bridge.spanMm();
    double flat = BEYOND_MM;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = Math.sqrt(told * flat);
      if (isFlat(model, bridge, middle)) {
        flat = middle;
      } else {
        told = middle;
      }
    }
    double step = Math.pow(10, Math.floor(Math.log10(told)) - 1);
    return Math.floor(told / step) * step;
  }

  private static boolean isFlat(RadiusModel model, Bridge bridge, double radiusMm) {
    double depthMm = Chord.depthMm(1 / radiusMm, bridge.spanMm(), bridge.footRadiusMm());
    return model.estimate(Length.nm(depthMm), 0, 1).flat();
  }

  /** On a convex face, where skew and section do not matter. */
  private static SetUp setUp(Bridge bridge, Indicator indicator) {
    Bridge straight = new Bridge(0, bridge.name(), bridge.span(), bridge.feet(), 0);
    Section any = new Section.Flat(1, 1);
    return new SetUp(straight, indicator, null, null, any, Face.OUTER, Face.OUTER);
  }
}
