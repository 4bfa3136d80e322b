/**
 * Runs a station: link, decode, capture, radius, store, and announces. Threads and clock live here.
 */
@NullMarked
package org.chordlog.station;

import org.jspecify.annotations.NullMarked;
