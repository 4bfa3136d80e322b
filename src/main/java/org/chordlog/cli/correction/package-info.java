/** Commands that say how to correct the rollers, and how rings and arcs close. */
@NullMarked
package org.chordlog.cli.correction;

import org.jspecify.annotations.NullMarked;
