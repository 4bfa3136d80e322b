/**
 * Who may do what: people with their roles, tokens of programs, sessions, and screens that people
 * share. Knows nothing of requests and pages.
 */
@NullMarked
package org.chordlog.account;

import org.jspecify.annotations.NullMarked;
