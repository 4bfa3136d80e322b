/** The stores of a plant's workshop computers in one PostgreSQL database. */
@NullMarked
package org.chordlog.store.postgres;

import org.jspecify.annotations.NullMarked;
