package org.chordlog.correction;

import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Section;

/**
 * What the yield strengths on two lots' certificates foretell of the step between the lots, for a
 * round tube, a solid round and a flat; of others the moment beyond yield is not known here.
 *
 * @param youngMpa Young's modulus, MPa
 * @param hardening tangent modulus over Young's modulus, 0 to 0.9
 * @param uncertaintyMpa standard uncertainty of each yield strength for its lot, MPa
 */
public record Certificates(
    Section section, double youngMpa, double hardening, double uncertaintyMpa) {
  public Certificates {
    Check.positive("youngMpa", youngMpa);
    Check.within("hardening", hardening, 0, 0.9);
    Check.notNegative("uncertaintyMpa", uncertaintyMpa);
    shape(section);
  }

  /** From a lot of {@code yieldMpa} to one of {@code nextYieldMpa}, bent to {@code targetMm}. */
  public Offset step(double targetMm, double yieldMpa, double nextYieldMpa) {
    double yieldPerMm = SectionShape.yieldPerMm(yieldMpa, youngMpa, fibreMm());
    Springback present = new Springback(shape(section), yieldPerMm, hardening);
    return YieldOffset.between(present, targetMm, yieldMpa, nextYieldMpa, uncertaintyMpa);
  }

  /** Of a thin tube the middle of its wall. */
  private double fibreMm() {
    return section instanceof Section.RoundTube tube
        ? (tube.outsideDiameterMm() - tube.wallMm()) / 2
        : section.heightMm() / 2;
  }

  private static SectionShape shape(Section section) {
    return switch (section.kind()) {
      case ROUND_TUBE -> SectionShape.THIN_TUBE;
      case SOLID_ROUND -> SectionShape.SOLID_ROUND;
      case FLAT -> SectionShape.RECTANGLE;
      case BOX, PROFILE ->
          throw new BadInput(
              "section", section.kind(), "can't be foretold", "a tube, a round or a flat");
    };
  }
}
