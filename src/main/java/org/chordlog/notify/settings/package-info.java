/** The file that says who is told of alerts and how. */
@NullMarked
package org.chordlog.notify.settings;

import org.jspecify.annotations.NullMarked;
