package org.chordlog.measure;

/**
 * An order of pieces with its specification, on one machine and station. {@code revision} numbers
 * the job's specifications from 1; the store gives it (0: not stored yet).
 */
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
    long openedAtMicros,
    OrderDetails details,
    int revision) {
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

  /** Without details, not stored yet. */
  public Job(
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
    this(
        id,
        name,
        part,
        machine,
        station,
        section,
        materialLot,
        measuredFace,
        specification,
        plan,
        state,
        openedAtMicros,
        OrderDetails.NONE,
        0);
  }

  /** The same job as stored under an id. */
  public Job stored(long newId, int newRevision) {
    return copy(newId, specification, state, details, newRevision);
  }

  public Job withSpecification(Specification changed) {
    return copy(id, changed, state, details, revision);
  }

  public Job withState(State changed) {
    return copy(id, specification, changed, details, revision);
  }

  public Job withDetails(OrderDetails changed) {
    return copy(id, specification, state, changed, revision);
  }

  private Job copy(
      long newId,
      Specification newSpecification,
      State newState,
      OrderDetails newDetails,
      int newRevision) {
    return new Job(
        newId,
        name,
        part,
        machine,
        station,
        section,
        materialLot,
        measuredFace,
        newSpecification,
        plan,
        newState,
        openedAtMicros,
        newDetails,
        newRevision);
  }
}
