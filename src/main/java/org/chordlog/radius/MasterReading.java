package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;

/** A depth, less the zero, read on a master: the mean of samples with that standard deviation. */
public record MasterReading(Master master, long depthNm, long scatterNm, int sampleCount) {
  public MasterReading {
    Check.within("scatterNm", scatterNm, 0, Long.MAX_VALUE);
    Check.within("sampleCount", sampleCount, 1, Integer.MAX_VALUE);
    if (master.face() == Face.CENTRELINE) {
      throw new BadInput("face", Face.CENTRELINE, "can't carry a bridge", "OUTER, INNER");
    }
    boolean convex = master.face() == Face.OUTER;
    if (depthNm == 0 || convex != depthNm > 0) {
      String allowed = "positive on a convex master, negative on a concave one";
      throw new BadInput("depthNm", depthNm, "does not fit " + master.name(), allowed);
    }
  }

  double depthMm() {
    return Length.mm(depthNm);
  }

  double curvaturePerMm() {
    return Faces.sign(master.face()) / master.radiusMm();
  }

  /** ∂h/∂κ·κ²·u(R) with the stated U at k = 2, mm: the master's own part in the depth. */
  double masterPartMm(double spanMm, double footRadiusMm) {
    double depth = Chord.depthMm(curvaturePerMm(), spanMm, footRadiusMm);
    double u = master.expandedUncertaintyMm() / 2;
    double kappa = curvaturePerMm();
    return kappa * kappa * u / Slope.at(depth, spanMm, footRadiusMm).byDepth();
  }
}
