/**
 * The service as a process over pseudo-terminals: killed, starved, flooded, and looked at after.
 */
@NullMarked
package org.chordlog.harness;

import org.jspecify.annotations.NullMarked;
