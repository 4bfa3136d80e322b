package org.chordlog.profile;

import org.chordlog.measure.RadiusEstimate;
import org.chordlog.radius.RadiusModel;

/**
 * The mean curvature of the measured face along the evaluated length, also as a depth; the scatter
 * of one window's mean as a depth, the number of windows, and what follows for the mean of them:
 * its variance (mm² of depth), degrees of freedom and standard deviation; and the radius on the
 * specified face, whose uncertainty also holds what all places share.
 */
public record MeanBend(
    double bendPerMm,
    long depthNm,
    long scatterNm,
    int windows,
    double varianceOfMeanMm2,
    double degreesOfFreedom,
    double samplePerMm,
    RadiusEstimate radius) {
  static MeanBend of(Curve zone, Windows windows, RadiusModel model) {
    double mean = zone.mean();
    long depthNm = model.depthNmOfBend(mean);
    double byDepth = model.bendByDepth(depthNm);
    double scatterMm = windows.scatterPerMm() / byDepth;
    double variance = scatterMm * scatterMm / windows.size();
    return new MeanBend(
        mean,
        depthNm,
        Math.round(scatterMm * 1e6),
        windows.size(),
        variance,
        windows.degrees(),
        windows.scatterPerMm() / Math.sqrt(windows.size()),
        model.estimateOfMean(depthNm, variance, windows.degrees()));
  }
}
