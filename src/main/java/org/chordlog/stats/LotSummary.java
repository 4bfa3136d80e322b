package org.chordlog.stats;

import org.chordlog.stats.capability.Summary;

/**
 * The figures of the readings of one material lot ({@code lot} empty: none was named) with the ids
 * of its first and last reading, excluded ones left out.
 */
public record LotSummary(
    String lot, long firstReadingId, long lastReadingId, int pieces, Summary summary) {}
