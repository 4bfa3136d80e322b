package org.chordlog.measure;

import java.util.List;

/**
 * A study of the gauge done at a station: who measures what how often, on what, and how far it is.
 * Its steps are numbered from 1; the seed fixes their order. Its measurements are never readings of
 * a job.
 */
public record GaugeStudy(
    long id, String station, String name, Design design, Subject subject, State state, Made made) {
  /** What is examined. */
  public enum Kind {
    CROSSED,
    SPLIT,
    ONE_OPERATOR,
    BIAS,
    LINEARITY,
    TYPE1;

    /** On masters instead of pieces. */
    public boolean onMasters() {
      return this == BIAS || this == LINEARITY || this == TYPE1;
    }
  }

  /** While it is running, what its station captures belongs to it and to no job. */
  public enum State {
    PAUSED,
    RUNNING,
    DONE,
    ABANDONED;

    public boolean ended() {
      return this == DONE || this == ABANDONED;
    }
  }

  /** {@code parts} are pieces or masters; {@code places} is empty where a part is one place. */
  public record Design(
      Kind kind,
      List<String> parts,
      List<String> places,
      List<String> operators,
      int repeats,
      long seed) {
    private static final int MOST_STEPS = 2_000;

    public Design {
      parts = List.copyOf(parts);
      places = List.copyOf(places);
      operators = List.copyOf(operators);
      if (parts.isEmpty() || operators.isEmpty()) {
        throw new BadInput(
            parts.isEmpty() ? "parts" : "operators", "none", "is named", "one name or more");
      }
      Check.within("repeats", repeats, 1, 100);
      long steps = (long) parts.size() * Math.max(1, places.size()) * operators.size() * repeats;
      Check.within("measurements", steps, 2, MOST_STEPS);
    }

    public int steps() {
      return parts.size() * Math.max(1, places.size()) * operators.size() * repeats;
    }
  }

  /** What is measured: pieces of that section to those limits, or masters in the parts' order. */
  public record Subject(
      Section section, Face measuredFace, Specification specification, List<Master> masters) {
    public Subject {
      masters = List.copyOf(masters);
    }
  }

  /** When and by whom it was planned. */
  public record Made(long atMicros, String by) {}

  public GaugeStudy {
    Check.text("station", station);
    Check.text("name", name);
    if (design.kind().onMasters() && design.parts().size() != subject.masters().size()) {
      throw new BadInput("masters", subject.masters().size(), "do not fit the parts", "one each");
    }
  }

  public GaugeStudy withId(long other) {
    return new GaugeStudy(other, station, name, design, subject, state, made);
  }

  public GaugeStudy become(State other) {
    return new GaugeStudy(id, station, name, design, subject, other, made);
  }
}
