package org.chordlog.measure;

/**
 * A comparison of a station against a master: passes when |radius − master| is within the limit.
 */
public record InterimCheck(
    long id,
    String station,
    long bridgeId,
    long masterId,
    double radiusMm,
    double masterRadiusMm,
    double limitMm,
    boolean passed,
    long takenAtMicros,
    String takenBy) {}
