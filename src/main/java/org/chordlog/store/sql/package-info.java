/**
 * The store as SQL that several databases understand: records as rows and the queries over them.
 * What differs between databases is a {@link org.chordlog.store.sql.Dialect}.
 */
@NullMarked
package org.chordlog.store.sql;

import org.jspecify.annotations.NullMarked;
