/**
 * Tells people what they must know: raises alerts from committed facts on a fixed schedule, with a
 * cursor over the store. Threads of its own; no station, monitor or page ever waits for it.
 */
@NullMarked
package org.chordlog.notify;

import org.jspecify.annotations.NullMarked;
