/**
 * Mathematics of the statistics: moments, fits, tests, intervals and factors. Pure, and without a
 * word of the trade.
 */
@NullMarked
package org.chordlog.stats.math;

import org.jspecify.annotations.NullMarked;
