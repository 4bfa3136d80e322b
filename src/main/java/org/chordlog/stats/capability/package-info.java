/** Capability indices and other figures of a job, with their intervals and cautions. Pure. */
@NullMarked
package org.chordlog.stats.capability;

import org.jspecify.annotations.NullMarked;
