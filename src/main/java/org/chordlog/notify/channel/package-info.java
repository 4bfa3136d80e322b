/** What goes out to people and programs, and where it goes to, whatever carries it. */
@NullMarked
package org.chordlog.notify.channel;

import org.jspecify.annotations.NullMarked;
