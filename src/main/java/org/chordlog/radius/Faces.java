package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;

/**
 * The same bend on its faces: R outer = R centreline + c, R inner = R centreline + c − H, with the
 * section's height H and the distance c of its centroid from the outer face.
 */
public final class Faces {
  private Faces() {}

  /** Radius on {@code to} of a bend whose radius on {@code from} is given, mm. */
  public static double convertMm(double radiusMm, Section section, Face from, Face to) {
    double converted = Check.positive("radiusMm", radiusMm) + stepMm(section, from, to);
    if (!(converted > 0)) {
      throw noRoom(radiusMm, from, to, -stepMm(section, from, to));
    }
    return converted;
  }

  /** What is added to a radius on {@code from} to have it on {@code to}, mm. */
  public static double stepMm(Section section, Face from, Face to) {
    return belowOuterMm(section, from) - belowOuterMm(section, to);
  }

  static BadInput noRoom(double radiusMm, Face from, Face to, double leastMm) {
    return new BadInput(
        "radiusMm",
        Length.mm(Length.nm(radiusMm)),
        "on the " + from.words() + " leaves no " + to.words() + " for this section",
        Sentence.of("above %s", Quantity.stated(leastMm)));
  }

  /** Sign of the curvature of a bend as seen on a face: the inner one is concave. */
  static int sign(Face face) {
    return face == Face.INNER ? -1 : 1;
  }

  private static double belowOuterMm(Section section, Face face) {
    return switch (face) {
      case OUTER -> 0;
      case CENTRELINE -> section.centroidFromOuterMm();
      case INNER -> section.heightMm();
    };
  }
}
