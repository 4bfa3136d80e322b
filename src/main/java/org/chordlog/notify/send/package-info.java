/**
 * Tells people and programs of alerts: decides who is told of what, makes mails and calls of it,
 * and sends them, by threads of its own. What is to be sent is stored first and sent after, so that
 * a kill at any moment sends at least once and under the same id.
 */
@NullMarked
package org.chordlog.notify.send;

import org.jspecify.annotations.NullMarked;
