package org.chordlog.simulator;

/**
 * The truth of one time that the bridge stood on something; times in seconds of the scenario.
 * {@code seatedDepthMm} is the true depth changed by how the operator put the bridge on: what a
 * perfect indicator would show. A flat has piece 0 and no radius.
 */
public record Contact(
    int piece,
    String position,
    String lot,
    double radiusMm,
    double trueDepthMm,
    double seatedDepthMm,
    double touchedSeconds,
    double restFromSeconds,
    double restToSeconds,
    double leftSeconds) {}
