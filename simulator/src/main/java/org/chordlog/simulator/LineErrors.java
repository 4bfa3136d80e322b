package org.chordlog.simulator;

/**
 * What is wrong with each depth of a stream alike: mm of depth, as of the zero, and a share of the
 * curvature, as of the span.
 */
public record LineErrors(double depthMm, double curvatureShare) {
  /** A perfect gauge. */
  public static final LineErrors NONE = new LineErrors(0, 0);
}
