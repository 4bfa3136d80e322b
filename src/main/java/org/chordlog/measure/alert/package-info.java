/** Alerts as records: what is wrong with which machine, station or the service, and who knows. */
@NullMarked
package org.chordlog.measure.alert;

import org.jspecify.annotations.NullMarked;
