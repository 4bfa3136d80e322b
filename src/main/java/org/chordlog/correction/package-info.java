/**
 * Pieces, lots and roller moves to advice: correct by how much, or leave alone. One filter a
 * machine estimates the level of its pieces and the gain of its scale. Pure.
 *
 * <p>All deviations are in permil of the target's curvature, 1000 (κ/κ_target − 1): positive is too
 * tight. In curvature the gain of a machine hardly depends on the radius, in radius it does.
 */
@NullMarked
package org.chordlog.correction;

import org.jspecify.annotations.NullMarked;
