package org.chordlog.simulator;

/** A place on a bent piece, and the radius of its centreline there. */
record Workpiece(int piece, String position, String lot, double centrelineRadiusMm) {}
