/** A virtual machine, piece, operator and indicator that speak through a real device. */
@NullMarked
package org.chordlog.simulator;

import org.jspecify.annotations.NullMarked;
