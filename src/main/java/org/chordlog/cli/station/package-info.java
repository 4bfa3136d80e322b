/** Commands that ask a running service. */
@NullMarked
package org.chordlog.cli.station;

import org.jspecify.annotations.NullMarked;
