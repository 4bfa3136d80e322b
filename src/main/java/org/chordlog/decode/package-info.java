/** Bytes to frames to values. Pure; resynchronises by itself. */
@NullMarked
package org.chordlog.decode;

import org.jspecify.annotations.NullMarked;
