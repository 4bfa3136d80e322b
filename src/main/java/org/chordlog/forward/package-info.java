/** Tells the database of the plant what is recorded here, and does what is asked from there. */
@NullMarked
package org.chordlog.forward;

import org.jspecify.annotations.NullMarked;
