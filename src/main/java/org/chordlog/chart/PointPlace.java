package org.chordlog.chart;

import org.chordlog.stats.ChartPoint;

/** Where a point stands in the picture, px from the upper left; panel counts from 0 downwards. */
public record PointPlace(int panel, double xPx, double yPx, ChartPoint point) {}
