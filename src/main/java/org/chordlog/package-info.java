/** Chordlog: the radius of every bend, with how far to trust it. */
@NullMarked
package org.chordlog;

import org.jspecify.annotations.NullMarked;
