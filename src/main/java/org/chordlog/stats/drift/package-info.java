/** The drift of a machine over its jobs. Pure. */
@NullMarked
package org.chordlog.stats.drift;

import org.jspecify.annotations.NullMarked;
