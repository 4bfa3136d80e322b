/** An invented shop whose records fill a real store, for the tests and looks at the pages. */
@NullMarked
package org.chordlog.shop;

import org.jspecify.annotations.NullMarked;
