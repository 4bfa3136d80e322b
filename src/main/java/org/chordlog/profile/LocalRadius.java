package org.chordlog.profile;

import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;

/**
 * The radius at a place on the specified face: a mean with the bridge's triangle over the span and
 * over the window around the place. A marked one holds a spot that was recognised on the face.
 */
public record LocalRadius(
    double placeMm, RadiusEstimate radius, Decision decision, boolean marked) {}
