/** Server-sent events: one bounded queue and one thread a client, readings resumed by id. */
@NullMarked
package org.chordlog.web.event;

import org.jspecify.annotations.NullMarked;
