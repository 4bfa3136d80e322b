/** A job's readings, capability and studies as a QIF 3.0 results document (ISO 23952:2020). */
@NullMarked
package org.chordlog.report.qif;

import org.jspecify.annotations.NullMarked;
