/** Depth to radius with its uncertainty, calibration, decision and span advice. Pure. */
@NullMarked
package org.chordlog.radius;

import org.jspecify.annotations.NullMarked;
