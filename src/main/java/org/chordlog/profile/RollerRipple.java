package org.chordlog.profile;

import org.chordlog.measure.Roller;

/**
 * What a roller's ripple is, over the pieces looked at: amplitude as percent of curvature, as it is
 * on the piece and not as the bridge shows it, with its standard uncertainty; the wavelength at
 * which it is strongest; power against that of neighbouring wavelengths, 1 without a ripple; and
 * the probability that chance alone makes as much, all rollers and frequencies counted.
 */
public record RollerRipple(
    Roller roller,
    double wavelengthMm,
    double amplitudePercent,
    double uncertaintyPercent,
    double againstNeighbours,
    double probability) {}
