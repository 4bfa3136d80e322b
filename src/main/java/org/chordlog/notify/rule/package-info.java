/**
 * The rules of alerts: when one is raised, what its next state is, what a person may do to it.
 * Pure: facts and time are arguments.
 */
@NullMarked
package org.chordlog.notify.rule;

import org.jspecify.annotations.NullMarked;
