package org.chordlog.chart;

import org.chordlog.stats.control.ChartPoint;
import org.jspecify.annotations.Nullable;

/**
 * Where something is drawn in the picture, px from the upper left, and what to say of it and of the
 * limits there. {@code panel} counts from 0 downwards; {@code point} is null where it is no point
 * of a control chart.
 */
public record PointPlace(
    int panel, double xPx, double yPx, String label, String limits, @Nullable ChartPoint point) {}
