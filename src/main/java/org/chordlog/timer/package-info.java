/** What timers do again and again. */
@NullMarked
package org.chordlog.timer;

import org.jspecify.annotations.NullMarked;
