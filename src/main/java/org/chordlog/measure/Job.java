package org.chordlog.measure;

/**
 * An order of pieces with its specification, on one machine and station. {@code revision} numbers
 * the job's specifications from 1; the store gives it (0: not stored yet).
 */
public record Job(
    long id,
    int revision,
    Order order,
    Workplace workplace,
    Inspection inspection,
    State state,
    long openedAtMicros) {
  public enum State {
    OPEN,
    CLOSED
  }

  /** What is made, and from which lot of material. */
  public record Order(String name, String part, String materialLot, OrderDetails details) {
    public Order {
      Check.text("name", name);
    }

    public Order(String name, String part, String materialLot) {
      this(name, part, materialLot, OrderDetails.NONE);
    }
  }

  /** Where it is bent and where it is measured. */
  public record Workplace(String machine, String station) {
    public Workplace {
      Check.text("machine", machine);
      Check.text("station", station);
    }
  }

  /** What is measured, on which face, against which limits, and how often. */
  public record Inspection(
      Section section, Face measuredFace, Specification specification, Plan plan) {
    public Inspection {
      if (measuredFace == Face.CENTRELINE) {
        throw new BadInput("measuredFace", measuredFace, "can't carry a bridge", "OUTER, INNER");
      }
    }
  }

  /** An open job, not stored yet. */
  public static Job opened(
      Order order, Workplace workplace, Inspection inspection, long openedAtMicros) {
    return new Job(0, 0, order, workplace, inspection, State.OPEN, openedAtMicros);
  }

  /** The same job as stored under an id. */
  public Job stored(long newId, int newRevision) {
    return new Job(newId, newRevision, order, workplace, inspection, state, openedAtMicros);
  }

  /** The same job with other limits. */
  public Job withSpecification(Specification changed) {
    Inspection other = new Inspection(section(), measuredFace(), changed, plan());
    return new Job(id, revision, order, workplace, other, state, openedAtMicros);
  }

  /** The same job, open or closed. */
  public Job withState(State changed) {
    return new Job(id, revision, order, workplace, inspection, changed, openedAtMicros);
  }

  /** The same job with other details of its order. */
  public Job withDetails(OrderDetails changed) {
    Order other = new Order(name(), part(), materialLot(), changed);
    return new Job(id, revision, other, workplace, inspection, state, openedAtMicros);
  }

  public String name() {
    return order.name();
  }

  public String part() {
    return order.part();
  }

  public String materialLot() {
    return order.materialLot();
  }

  public OrderDetails details() {
    return order.details();
  }

  public String machine() {
    return workplace.machine();
  }

  public String station() {
    return workplace.station();
  }

  public Section section() {
    return inspection.section();
  }

  public Face measuredFace() {
    return inspection.measuredFace();
  }

  public Specification specification() {
    return inspection.specification();
  }

  public Plan plan() {
    return inspection.plan();
  }
}
