package org.chordlog.profile;

/**
 * A roller's ripple on one piece, to be stored: evidence of it (−ln of the probability that chance
 * alone makes as much, whose mean is 1 without a ripple), square of the amplitude (percent of
 * curvature) less what noise adds, so that it may be negative, and the variance of an amplitude.
 */
public record RipplePoint(
    String roller, double evidence, double squarePercent, double variancePercent) {}
