package org.chordlog.measure;

/** An order of pieces with its specification, on one machine and station. */
public record Job(
    long id,
    String name,
    String part,
    String machine,
    String station,
    Section section,
    String materialLot,
    Face measuredFace,
    Specification specification,
    Plan plan,
    State state,
    long openedAtMicros) {
  public enum State {
    OPEN,
    CLOSED
  }

  public Job {
    Check.text("name", name);
    Check.text("machine", machine);
    Check.text("station", station);
    if (measuredFace == Face.CENTRELINE) {
      throw new BadInput("measuredFace", measuredFace, "can't carry a bridge", "OUTER, INNER");
    }
  }
}
