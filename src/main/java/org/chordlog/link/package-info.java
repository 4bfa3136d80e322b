/** Opens, reads, watches and reopens a source of bytes. */
@NullMarked
package org.chordlog.link;

import org.jspecify.annotations.NullMarked;
