package org.chordlog.stats.control;

/** What a chart's values are: the quantity and its unit. */
public record Axis(String quantity, String unit) {}
