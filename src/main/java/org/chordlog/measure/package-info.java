/** The words of the trade as records: what is measured, with what, on what. Pure. */
@NullMarked
package org.chordlog.measure;

import org.jspecify.annotations.NullMarked;
