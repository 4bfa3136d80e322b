/** The command line. */
@NullMarked
package org.chordlog.cli;

import org.jspecify.annotations.NullMarked;
