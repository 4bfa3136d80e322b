package org.chordlog.measure;

/**
 * A roller that a section runs over: of the machine, of the gauge, of a straightener or a feeder.
 * {@code side} is the face that it touches; its diameter is where it touches, with a standard
 * uncertainty; {@code driven} tells that a motor turns it, so that it may slip either way.
 */
public record Roller(
    String name, double diameterMm, double diameterUncertaintyMm, Face side, boolean driven) {
  public Roller {
    Check.text("name", name);
    Check.lengthWithin("diameterMm", diameterMm, 1, 5000);
    Check.lengthWithin("diameterUncertaintyMm", diameterUncertaintyMm, 0, diameterMm / 10);
    if (side == Face.CENTRELINE) {
      throw new BadInput("side", side, "can't be touched by a roller", "OUTER, INNER");
    }
  }
}
