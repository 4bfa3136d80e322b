/** The store in one SQLite file. */
@NullMarked
package org.chordlog.store.sqlite;

import org.jspecify.annotations.NullMarked;
