/** Studies of the gauge from a file of readings, their planning and their order. */
@NullMarked
package org.chordlog.cli.study;

import org.jspecify.annotations.NullMarked;
