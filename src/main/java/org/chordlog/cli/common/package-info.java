/** What several commands share: exit codes, lengths, columns of a file, JSON. */
@NullMarked
package org.chordlog.cli.common;

import org.jspecify.annotations.NullMarked;
