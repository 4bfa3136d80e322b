/**
 * Who is told of an alert, when, and how often: people, groups, shifts, escalation, and how many
 * mails a person gets. Pure: time is an argument.
 */
@NullMarked
package org.chordlog.notify.people;

import org.jspecify.annotations.NullMarked;
