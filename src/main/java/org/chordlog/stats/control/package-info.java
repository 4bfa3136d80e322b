/** Readings to subgroups, control charts and run tests. Pure. */
@NullMarked
package org.chordlog.stats.control;

import org.jspecify.annotations.NullMarked;
