/** Samples to captured depths: state machines without clock or thread. */
@NullMarked
package org.chordlog.capture;

import org.jspecify.annotations.NullMarked;
