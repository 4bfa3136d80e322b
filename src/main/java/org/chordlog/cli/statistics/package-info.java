/** Commands on files of readings. */
@NullMarked
package org.chordlog.cli.statistics;

import org.jspecify.annotations.NullMarked;
