/**
 * A section that runs through the gauge: samples with length to a profile of curvature along each
 * piece, its evaluated length, mean, uniformity and shape, and the roller behind a ripple. Pure.
 */
@NullMarked
package org.chordlog.profile;

import org.jspecify.annotations.NullMarked;
