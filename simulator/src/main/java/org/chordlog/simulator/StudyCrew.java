package org.chordlog.simulator;

import java.util.Map;
import java.util.Random;
import org.chordlog.measure.Check;

/**
 * The operators of a study of the gauge and the pieces they measure, all invented: each name has a
 * bias or a radius of its own, always the same for the same seed. Depths and radii in mm.
 */
public record StudyCrew(Map<String, Double> biasMm, Scatter scatter, Parts parts, long seed) {
  /** How the depth scatters: at a mark, and by how much more where the place is found by eye. */
  public record Scatter(double repeatMm, double byEyeMm) {
    public Scatter {
      Check.notNegative("repeatMm", repeatMm);
      Check.notNegative("byEyeMm", byEyeMm);
    }
  }

  /**
   * How the radius differs between pieces and between places of a piece; by how much depth a piece
   * loses each time that it is measured.
   */
  public record Parts(double pieceSdMm, double placeSdMm, double springMm) {
    public Parts {
      Check.notNegative("pieceSdMm", pieceSdMm);
      Check.notNegative("placeSdMm", placeSdMm);
      Check.notNegative("springMm", springMm);
    }
  }

  /** What the bias of people whose names are not listed scatters by. */
  private static final double BIAS_SD_MM = 0.002;

  public StudyCrew {
    biasMm = Map.copyOf(biasMm);
  }

  /** Whoever comes: pieces 4 mm apart, places 1 mm, hands good to some thousandths of depth. */
  public static StudyCrew usual(long seed) {
    return new StudyCrew(Map.of(), new Scatter(0.0015, 0.004), new Parts(4, 1, 0), seed);
  }

  /** What that person reads too much, on average. */
  public double biasMm(String person) {
    return biasMm.getOrDefault(person, BIAS_SD_MM * drawn("person " + person));
  }

  /** Radius of a piece's centreline at a place; an empty place is its middle. */
  public double radiusMm(double nominalMm, String part, String place) {
    double along = place.isEmpty() ? 0 : parts.placeSdMm() * drawn(part + " at " + place);
    return nominalMm + parts.pieceSdMm() * drawn("part " + part) + along;
  }

  private double drawn(String name) {
    return new Random(seed * 1_000_003L + name.hashCode()).nextGaussian();
  }
}
