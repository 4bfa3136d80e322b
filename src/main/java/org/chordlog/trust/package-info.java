/** Secrets and certificates that are given as files. */
@NullMarked
package org.chordlog.trust;

import org.jspecify.annotations.NullMarked;
