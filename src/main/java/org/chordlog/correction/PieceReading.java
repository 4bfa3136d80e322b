package org.chordlog.correction;

import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * One measurement on a piece: curvature on the specified face, 1/mm, positive in the sense of the
 * bend, with the part of its standard uncertainty that is new at each reading. Of several passes of
 * a piece the last one counts. A flat has a curvature too, near 0 and of either sign. Readings in
 * the line are one of these for each piece: their mean, at one position.
 */
public record PieceReading(
    String position, int pass, double perMm, double standardUncertaintyPerMm, boolean flat) {
  private static final String ANYWHERE = "";

  public PieceReading {
    Check.within("pass", pass, 1, 10_000);
    Check.finite("perMm", perMm);
    Check.notNegative("standardUncertaintyPerMm", standardUncertaintyPerMm);
  }

  /** A radius, mm, with what changes from reading to reading, mm. */
  public static PieceReading radius(double radiusMm, double standardUncertaintyMm) {
    double radius = Check.positive("radiusMm", radiusMm);
    double u = Check.notNegative("standardUncertaintyMm", standardUncertaintyMm);
    return new PieceReading(ANYWHERE, 1, 1 / radius, u / (radius * radius), false);
  }

  /** No bend seen. */
  public static PieceReading flat(double standardUncertaintyPerMm) {
    return new PieceReading(ANYWHERE, 1, 0, standardUncertaintyPerMm, true);
  }

  /** As a station measured it; {@code repeatability} as in the canonical constructor, 1/mm. */
  public static PieceReading of(RadiusEstimate radius, Face measured, double repeatability) {
    double bend = measured == Face.INNER ? -radius.curvaturePerMm() : radius.curvaturePerMm();
    return new PieceReading(ANYWHERE, 1, bend, repeatability, radius.flat());
  }

  /** The same reading at that position and pass. */
  public PieceReading at(String place, int passNumber) {
    return new PieceReading(place, passNumber, perMm, standardUncertaintyPerMm, flat);
  }

  void write(Packer to) {
    to.put(position).put(pass).put(perMm).put(standardUncertaintyPerMm).put(flat);
  }

  static PieceReading read(Unpacker from) {
    return new PieceReading(
        from.text(), from.anInt(), from.aDouble(), from.aDouble(), from.aBoolean());
  }
}
