/** Commands on depth, span and radius. */
@NullMarked
package org.chordlog.cli.gauge;

import org.jspecify.annotations.NullMarked;
