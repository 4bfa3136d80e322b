/**
 * Routes as rows, what may be asked of them and how it is refused; knows nothing of what they
 * answer.
 */
@NullMarked
package org.chordlog.web.http;

import org.jspecify.annotations.NullMarked;
