package org.chordlog.correction;

/**
 * A piece: its value, the variance of its reading, what adds to the scatter; the move that was
 * advised before it and not recorded (0: none) with the variance of the level from its error.
 */
record PieceInput(
    double permil,
    double readingVariance,
    double extraVariance,
    double silentMove,
    double silentVariance) {}
