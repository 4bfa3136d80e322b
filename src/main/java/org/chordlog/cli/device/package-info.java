/** Commands on ports and indicators. */
@NullMarked
package org.chordlog.cli.device;

import org.jspecify.annotations.NullMarked;
