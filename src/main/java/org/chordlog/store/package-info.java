/** What is stored, as interfaces; a database implements them. */
@NullMarked
package org.chordlog.store;

import org.jspecify.annotations.NullMarked;
