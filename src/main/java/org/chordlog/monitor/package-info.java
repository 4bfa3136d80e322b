/** Each job's running statistics, fed by what stations announce. */
@NullMarked
package org.chordlog.monitor;

import org.jspecify.annotations.NullMarked;
