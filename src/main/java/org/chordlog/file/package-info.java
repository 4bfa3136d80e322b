/** What the system says of files, in words. */
@NullMarked
package org.chordlog.file;

import org.jspecify.annotations.NullMarked;
