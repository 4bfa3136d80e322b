/** Commands on a data directory. */
@NullMarked
package org.chordlog.cli.records;

import org.jspecify.annotations.NullMarked;
