/** What is kept, as interfaces; the database stands behind them. */
@NullMarked
package org.chordlog.store;

import org.jspecify.annotations.NullMarked;
