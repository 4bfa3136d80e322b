package org.chordlog.report;

/** One line of the uncertainty budget as printed: source, value, its share of u in mm of radius. */
public record UncertaintyLine(
    String source,
    String value,
    String distribution,
    double standardUncertainty,
    String unit,
    double contributionMm) {}
