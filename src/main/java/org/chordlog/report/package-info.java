/** A job as a document or a table. */
@NullMarked
package org.chordlog.report;

import org.jspecify.annotations.NullMarked;
