package org.chordlog.profile;

/**
 * A part of a piece with one curvature: from one place to another as they were measured, its length
 * along the measured face, whether the bridge stood on full bend there, and the window that its
 * sampling error goes with.
 */
record Arc(
    double fromMm, double toMm, double lengthMm, double bendPerMm, boolean measured, int window) {}
