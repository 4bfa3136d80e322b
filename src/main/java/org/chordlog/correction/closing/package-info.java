/**
 * Closing of rings and arcs: what a radius does to gap, chord, rise and end, and the other way
 * round. Plane geometry of circular arcs. Lengths in mm, angles in radians unless a name says.
 */
@NullMarked
package org.chordlog.correction.closing;

import org.jspecify.annotations.NullMarked;
