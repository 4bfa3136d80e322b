/** Studies of the gauge: repeatability, operators, bias, linearity, stability, capability. Pure. */
@NullMarked
package org.chordlog.study;

import org.jspecify.annotations.NullMarked;
