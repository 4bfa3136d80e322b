package org.chordlog.notify.mail;

import java.time.Instant;

/**
 * What a mail program goes by: who gets it, the id by which it knows a mail that comes twice
 * ({@code id}, before the @), the id of the conversation that it belongs to (empty: none), and when
 * it was made.
 */
public record Envelope(String to, String id, String thread, Instant made) {}
