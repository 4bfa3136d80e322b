/** Chooses and opens the store. */
@NullMarked
package org.chordlog.store.open;

import org.jspecify.annotations.NullMarked;
