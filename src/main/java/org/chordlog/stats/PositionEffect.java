package org.chordlog.stats;

/**
 * How readings at a position differ from the mean of their piece, over pieces read at two positions
 * or more: mean difference with its interval at 95 % by Student's t over the pieces (NaN below two
 * pieces). {@code differs} is judged at 5 % for all positions together (Bonferroni).
 */
public record PositionEffect(
    String position,
    long pieces,
    double mean,
    double standardDeviation,
    double meanDifference,
    double lower,
    double upper,
    boolean differs) {}
