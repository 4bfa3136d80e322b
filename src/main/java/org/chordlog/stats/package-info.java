/** Readings to control charts, run tests and capability. Pure. */
@NullMarked
package org.chordlog.stats;

import org.jspecify.annotations.NullMarked;
