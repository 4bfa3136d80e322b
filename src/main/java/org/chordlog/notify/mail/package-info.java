/** Mails over SMTP. */
@NullMarked
package org.chordlog.notify.mail;

import org.jspecify.annotations.NullMarked;
