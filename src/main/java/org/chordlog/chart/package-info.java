/** Snapshots to pictures. */
@NullMarked
package org.chordlog.chart;

import org.jspecify.annotations.NullMarked;
