/** Signed calls to programs, after the Standard Webhooks specification 1.0.0. */
@NullMarked
package org.chordlog.notify.webhook;

import org.jspecify.annotations.NullMarked;
