package org.chordlog.radius;

/**
 * What is new each time the bridge is placed, in mm of radius on the specified face: the standard
 * uncertainty from the step of the reading, its scatter and the skew, and how much the value is off
 * by in the mean since skew biases one way (negative: too small). What stays the same from placing
 * to placing (zero, span, permissible error) is in neither.
 */
public record Placing(double standardUncertaintyMm, double biasMm) {}
