package org.chordlog.report;

import org.chordlog.measure.Sentence;

/** One line of the uncertainty budget: source, value, its share of u in mm of radius. */
public record UncertaintyLine(
    String source,
    Sentence value,
    String distribution,
    double standardUncertainty,
    String unit,
    double contributionMm) {}
